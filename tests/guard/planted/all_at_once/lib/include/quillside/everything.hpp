#pragma once
#include <quillside/job/drill.hpp>
