#pragma once

#include <array>
#include <string_view>

namespace manciple::foods {

/// A food that most kitchens take in place of others of its group: so much of each does the same,
/// in the basis of the foods.
struct Swap {
  int group = 0;
  std::string_view food;
  int amount = 1;
};

/// Weight for weight. Common practice, no source. None changes what an eater who must avoid
/// something has to know.
constexpr std::array usual_swaps{Swap{1, "white rice"},
                                 Swap{1, "jasmine rice"},
                                 Swap{2, "vegetable oil"},
                                 Swap{2, "canola oil"},
                                 Swap{2, "sunflower oil"},
                                 Swap{2, "corn oil"},
                                 Swap{3, "spaghetti"},
                                 Swap{3, "linguine"},
                                 Swap{3, "fettuccine"},
                                 Swap{4, "penne"},
                                 Swap{4, "rotini"},
                                 Swap{5, "red wine vinegar"},
                                 Swap{5, "white wine vinegar"},
                                 Swap{5, "cider vinegar"},
                                 Swap{6, "canned diced tomato"},
                                 Swap{6, "canned whole tomato"},
                                 Swap{7, "canned white bean"},
                                 Swap{7, "canned great northern bean"},
                                 Swap{7, "canned navy bean"}};

} // namespace manciple::foods
