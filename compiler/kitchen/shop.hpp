#pragma once

#include "foods/book.hpp"
#include "kitchen/ingredient.hpp"
#include "kitchen/read.hpp"

#include <optional>
#include <string>
#include <vector>

namespace manciple::kitchen {

enum class ShopId : std::uint32_t {};

/// A price that holds for some days.
struct Sale {
  Cents price = 0;
  std::optional<text::Date> from;
  std::optional<text::Date> until;
};

/// So many packs for a price: 2 for 5.00.
struct Deal {
  int packs = 0; ///< or steps of the scale
  Cents price = 0;
};

/// One way to buy a food at a shop: a pack of a size at a price, or by weight.
struct Offer {
  foods::FoodId food{};
  ShopId shop{};
  text::Span at;
  std::string pack; ///< what one is called: "3 lb bag", "14.5 oz can", "each", "lb"
  /// As purchased in the food's basis: of one pack; by weight, of the smallest step of the scale.
  Rational size;
  /// By weight: the steps that make up the unit that the price is for; 1 for packs.
  Rational steps_per_price = 1;
  bool by_weight = false;
  Cents price = 0;                   ///< of one pack, or of the unit ("lb") by weight
  std::optional<Cents> member_price; ///< instead of `price`, for members
  std::optional<Sale> sale;
  std::optional<Deal> deal;
  std::optional<int> limit; ///< packs (or steps) in one visit
  std::optional<text::Date> from;
  std::optional<text::Date> until;

  /// What a single one (or step) costs on a day, in cents, by a sale where that is less.
  [[nodiscard]] Rational each(text::Date day) const;
  /// The deal, on a day on which it costs less than one by one.
  [[nodiscard]] std::optional<Deal> deal_on(text::Date day) const;
  /// What `packs` of it cost on a day, in cents: by deals and one by one, as is cheapest.
  [[nodiscard]] Rational exact_cost(int packs, text::Date day) const;
  /// The same, rounded to the cent as a till does.
  [[nodiscard]] Cents cost(int packs, text::Date day) const;
  [[nodiscard]] bool on_sale(text::Date day) const;
};

/// Spend at least `over` in one visit, tax included, and pay `off` less.
struct Reduction {
  Cents over = 0;
  Cents off = 0;
};

/// A tax on some departments.
struct Tax {
  foods::Department department{};
  Rational rate;
};

struct Shop {
  ShopId id{};
  std::string slug;
  std::string name;
  std::vector<foods::Department> walk; ///< the order in which one passes the departments
  std::optional<Cents> stop_cost;
  std::vector<Tax> taxes;
  Rational cash_back = 0; ///< share of what is spent
  Cents credit = 0;       ///< store credit, good once in a plan
  std::optional<Reduction> reduction;
  std::vector<Offer> offers;

  /// Prices as a member pays them.
  void take_member_prices();
  [[nodiscard]] Rational tax_on(foods::Department department) const;
};

/// Reads a price list. Offers that cannot be read are left out, each with its error.
Shop read_shop(const text::Node& file, std::string slug, ShopId id, measure::System system,
               Names& names, text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
