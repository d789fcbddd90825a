#include "../run.hpp"
#include "run.hpp"
#include <quillside/model/chip.hpp>
