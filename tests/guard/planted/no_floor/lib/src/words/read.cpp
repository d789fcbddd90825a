#include <quillside/helpers/list.hpp>
