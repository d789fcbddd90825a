#include <toml++/toml.h>
