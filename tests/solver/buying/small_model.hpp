#pragma once

#include "buying/model/model.hpp"
#include "dice.hpp"

namespace manciple::buying {

/// Which parts of the model a random instance may use.
struct Features {
  bool freezing = true;
  bool opened = true;
  bool left_over = true;
  bool multi_buy = true;
  bool by_weight = true;
  bool stock = true;
  bool giving = true;
  bool containers = true;
  bool habits = true;
  bool places = true; ///< packs of one item kept in several places, some bought frozen
  bool room = false;
  bool credit = false;
  bool spend_over = false;
  bool vast = false; ///< prices a million times as high
};

/// Everything at once.
inline Features all_features() {
  Features features;
  features.room = features.credit = features.spend_over = true;
  return features;
}

/// A random instance small enough to try everything: a few items, demands, offers and stops, in
/// amounts that do not fit together.
Model make_small(Dice& dice, const Features& features);

} // namespace manciple::buying
