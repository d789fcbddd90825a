#pragma once
// A two-flute drill seen from its point, lip A to the right and cutting upward: what its numbers say, and the usual
// shape of lands and flutes to know it by.

#include <quillside/page/canvas.hpp>

namespace quillside::page {

struct DrillEnd {
  Length diameter{};
  Length web{};
  Angle chisel{}; // acute, from the lip
  Angle land{};   // outer corner to heel
};

struct Segment {
  Spot from;
  Spot to;
};

/// Where that end stands on the paper.
class EndView {
public:
  /// \param turned against the clock
  EndView(const DrillEnd& drill, Spot middle, double times, Angle turned = turns(0))
      : drill_(drill), middle_(middle), times_(times), turned_(turned) {}

  [[nodiscard]] Spot middle() const { return middle_; }
  [[nodiscard]] Length radius() const { return 0.5 * times_ * drill_.diameter; }
  [[nodiscard]] Length half_web() const { return 0.5 * times_ * drill_.web; }
  /// From lip A's outward direction round to its outer corner.
  [[nodiscard]] Angle corner() const;
  [[nodiscard]] Angle turned() const { return turned_; }
  /// Lip A from its inner end to its corner; lip B, which lies half a turn from it.
  [[nodiscard]] Segment lip_a() const;
  [[nodiscard]] Segment lip_b() const;
  /// The chisel edge at that acute angle, from lip A's inner end to lip B's.
  [[nodiscard]] Segment chisel(Angle acute) const;
  [[nodiscard]] Segment chisel() const { return chisel(drill_.chisel); }
  /// Lands and flutes.
  void draw_body(Canvas& canvas, const Pen& pen) const;

private:
  struct Place {
    Length along;
    Length across;
  };
  [[nodiscard]] Spot at(Place place) const;
  [[nodiscard]] Length inner(Angle acute) const;

  DrillEnd drill_;
  Spot middle_;
  double times_;
  Angle turned_;
};

} // namespace quillside::page
