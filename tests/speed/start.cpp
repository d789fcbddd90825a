// What one ask costs from the shell: the built tool against /bin/true, or against the program that is named, each
// started anew, in turns, 50 times. The median of the ratios of neighbours is judged, so that a busy machine slows both
// or is outvoted.
// usage: start [--most RATIO] [--against PROGRAM] TOOL WORD...

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string_view>
#include <vector>

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

namespace {

constexpr double usual_most = 1.8;
constexpr int pairs = 50;
constexpr int warm_up = 5;

/// Neither side sees the settings of whoever runs the test.
std::array<char*, 3> environment{const_cast<char*>("HOME=/nonexistent"), const_cast<char*>("LC_ALL=C"), nullptr};

/// Seconds from the start of a program to its end; \p words with the program first and null last.
double run(const std::vector<char*>& words) {
  posix_spawn_file_actions_t to_nowhere;
  posix_spawn_file_actions_init(&to_nowhere);
  posix_spawn_file_actions_addopen(&to_nowhere, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  pid_t child = 0;
  int status = 0;
  const auto start = std::chrono::steady_clock::now();
  const int spawned = posix_spawn(&child, words[0], &to_nowhere, nullptr, words.data(), environment.data());
  const bool ended = spawned == 0 && waitpid(child, &status, 0) == child;
  const std::chrono::duration<double> time = std::chrono::steady_clock::now() - start;
  posix_spawn_file_actions_destroy(&to_nowhere);
  if (!ended || !WIFEXITED(status) || WEXITSTATUS(status) != 0) {
    std::printf("%s did not run, or did not answer\n", words[0]);
    std::exit(1);
  }
  return time.count();
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 != 0 ? values[half] : (values[half - 1] + values[half]) / 2;
}

} // namespace

int main(int count, char** words) {
  double most = usual_most;
  std::vector<char*> least{const_cast<char*>("/bin/true"), nullptr};
  int first = 1;
  for (; first + 1 < count && std::string_view(words[first]).starts_with("--"); first += 2) {
    if (std::string_view(words[first]) == "--most") most = std::atof(words[first + 1]);
    if (std::string_view(words[first]) == "--against") least[0] = words[first + 1];
  }
  if (count <= first) {
    std::puts("usage: start [--most RATIO] [--against PROGRAM] TOOL WORD...");
    return 2;
  }
  std::vector<char*> ask(words + first, words + count);
  ask.push_back(nullptr);

  std::vector<double> ratios;
  std::vector<double> times;
  for (int pair = -warm_up; pair < pairs; ++pair) {
    double tool = 0;
    double base = 0;
    if (pair % 2 == 0) tool = run(ask);
    base = run(least);
    if (pair % 2 != 0) tool = run(ask);
    if (pair < 0) continue;
    ratios.push_back(tool / base);
    times.push_back(tool);
  }
  const double ratio = median(ratios);
  std::printf("  %.2f ms from start to end\n", 1e3 * median(times));
  std::printf("one ask against %s: ratio %.2f (at most %.1f)\n", least[0], ratio, most);
  return ratio <= most ? 0 : 1;
}
