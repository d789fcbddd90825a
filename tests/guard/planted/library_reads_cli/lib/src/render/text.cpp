#include "../../../cli/run.hpp"
