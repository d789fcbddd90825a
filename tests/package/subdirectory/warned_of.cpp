// -Wall, -Wextra, -Wconversion and -Wshadow each have something to say here.
int warned_of(double length, int unused) {
  int count = length;
  {
    int count = 2;
    (void)count;
  }
  int never_read;
  return count;
}
