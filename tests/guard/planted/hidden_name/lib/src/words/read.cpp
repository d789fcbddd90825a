#define HEADER <quillside/job/drill.hpp>
#include HEADER
