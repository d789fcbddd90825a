// The fault that is found lies outside the wrong line.
// says: SpindleSpeed
// driver says: not refused at its wrong line
#include <quillside/quantity/units.hpp>

#ifdef REFUSE
using Quantity = quillside::SpindleSpeed;
#else
using Quantity = quillside::Length;
#endif

Quantity thick() { return quillside::mm(1); }
