#include "../job/telling.hpp"
