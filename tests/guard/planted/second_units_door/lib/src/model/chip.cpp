#include <boost/units/cmath.hpp>
