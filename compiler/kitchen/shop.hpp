#pragma once

#include "foods/book.hpp"
#include "kitchen/household.hpp"
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
  int inside = 1; ///< packs in one, each opened by itself: 6 of "6 x 15 oz cans"
  /// Of one pack, or of the unit ("lb") by weight; absent where it is not known.
  std::optional<Cents> price;
  /// In no price list: the food is likely to be had here.
  bool likely = false;
  /// What one pack or step counts as where its price is not known, in cents.
  Rational guess;
  std::optional<Cents> member_price; ///< instead of `price`, for members
  std::optional<Cents> others_price; ///< where `price` is that for members: what others pay
  std::optional<Sale> sale;
  std::optional<Deal> deal;
  std::optional<int> limit; ///< packs (or steps) in one visit
  /// What is known of the allergens in this one; else what is known of the food counts.
  std::optional<foods::Allergens> allergens;
  std::optional<text::Date> from;
  std::optional<text::Date> until;

  /// What a single one (or step) costs on a day, in cents, by a sale where that is less. Absent
  /// where the price is not known.
  [[nodiscard]] std::optional<Rational> each(text::Date day) const;
  /// The deal, on a day on which it costs less than one by one.
  [[nodiscard]] std::optional<Deal> deal_on(text::Date day) const;
  /// What `packs` of it cost on a day, in cents: by deals and one by one, as is cheapest.
  [[nodiscard]] std::optional<Rational> exact_cost(int packs, text::Date day) const;
  /// The same, rounded to the cent as a till does.
  [[nodiscard]] std::optional<Cents> cost(int packs, text::Date day) const;
  [[nodiscard]] bool on_sale(text::Date day) const;
};

/// A day of the week on which a shop is open, and its hours if they are known.
struct Opening {
  std::chrono::weekday day;
  std::optional<int> from; ///< minutes from midnight
  std::optional<int> until;
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
  bool has_file = false; ///< else it is only named
  /// The departments that it has, in the order in which one passes them; empty where not known.
  std::vector<foods::Department> walk;
  std::vector<Opening> open; ///< none: not said, and every day
  std::optional<Cents> stop_cost;
  std::optional<Cents> membership; ///< what it costs a year
  std::vector<Tax> taxes;
  Rational cash_back = 0; ///< share of what is spent
  Cents credit = 0;       ///< store credit, good once in a plan
  std::optional<Reduction> reduction;
  std::vector<Offer> offers;

  /// Prices as a member pays them.
  void take_member_prices();
  /// Whether one can have been there by that time of the day, in minutes from midnight.
  [[nodiscard]] bool is_open(text::Date day, int home) const;
  [[nodiscard]] Rational tax_on(foods::Department department) const;
  /// What comes back later of a visit: its share of goods before tax, but not of what credit pays.
  [[nodiscard]] Cents comes_back(Cents goods, Cents by_credit) const;
};

/// The file's name of the shop that stands for all where none is known.
inline constexpr std::string_view any_shop = "any-shop";

/// The shop that a text means, by the name of its file or its own. One without a file is added: of
/// it only the name is known. Nothing, with an error, for what is nearly the name of a known one.
std::optional<ShopId> shop_named(std::string_view words, text::Span at, std::vector<Shop>& shops,
                                 text::Diagnostics& diagnostics);

/// Reads a price list. Offers that cannot be read are left out, each with its error.
Shop read_shop(const text::Node& file, std::string slug, ShopId id, const Household& household,
               Names& names, text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
