#pragma once
// What every sheet for the grinder has: the edge that lies on the disk's face, the proof of its print, a drill seen end
// on, words and numbers at the right; and the room for lines that run down to the left from where the point meets the
// disk.

#include <string>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/page/canvas.hpp>

#include "drill_end.hpp"
#include "ruler.hpp"

namespace quillside::page::card_grind {

inline constexpr Lettering small{mm(2)};
inline constexpr Lettering strong{mm(2.2), Weight::bold};
inline constexpr Lettering number{mm(3.2), Weight::bold};

inline constexpr Angle quarter = turns(0.25);
inline constexpr Angle half_turn = turns(0.5);

inline constexpr Length face_at = mm(5); // from the top of the box to the line of the disk's face
inline constexpr Length words_width = mm(45);
inline constexpr Length proof_room = ruler_height + mm(4);

inline constexpr Pen lip_pen{mm(0.9)};

/// The drill that the answer is about, its chisel edge as the answer sets it.
DrillEnd drill_of(const Answer& answer);
/// "gives point 118, relief 12"
std::string gives(const Answer& answer);
/// "swing 59"
std::string named(const std::string& what, Angle angle);

void draw_face(Canvas& canvas, const Box& box, const char* words);

/// A printer can stretch either way: a ruler across, and a length down the right edge.
void draw_proof(Canvas& canvas, const Box& box);

/// Both lips, the one to be ground heavy, and the chisel edge.
void draw_edges(Canvas& canvas, const EndView& view);

/// Below the line of the disk's face.
struct LinesRoom {
  Spot touch; // where the point meets the disk
  Length left{};
  Length bottom{};
};
/// How far a line that runs down to the left goes until it meets an edge. \param swing from the disk's face
Length run(const LinesRoom& room, Spot start, Angle swing);

struct SheetWords {
  std::string name;  // FENCE, WEDGE, FLAT
  std::string with;  // what it is, in a few words
  std::string facet; // FIRST FACET; empty where there is one
  std::vector<std::string> numbers = {};
  std::string says = {};
};
/// \param gives what the drill gets by it
/// \return where the next line would have its foot
Length write_words(Canvas& canvas, Spot first_foot, const SheetWords& words, const std::string& gives);

} // namespace quillside::page::card_grind
