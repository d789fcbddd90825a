#pragma once
#include <quillside/model/chip.hpp>
