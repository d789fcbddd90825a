// Without a guard: included twice it defines Band twice.

struct Band {
  double low;
};
