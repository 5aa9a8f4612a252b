#pragma once

#include "resolve/limits.hpp"
#include "resolve/resolve.hpp"

#include <set>
#include <tuple>
#include <vector>

/// What makings leave over, and which other makings take it. It is there once the dish is done, and
/// cleared away where it is eaten at once; what is used after its days in the fridge is frozen on
/// its own day. What is oldest goes first. Common practice, no source.
namespace manciple::resolve {

/// A recipe on a day that must not take what another gives: it would make it too old for its
/// leftovers, or bring somebody what they must not have.
struct Barred {
  /// The giver, its day and what it gives; the taker and its day.
  using One = std::tuple<RecipeId, Date, std::size_t, RecipeId, Date>;
  std::set<One> ones;
  bool all = false; ///< nothing is taken at all
};

/// An ingredient that could be what another making leaves over.
struct Ask {
  MakingId by{};
  RecipeId recipe{};
  std::size_t ingredient = 0;
  Date date;
  int clock = 0; ///< minutes from midnight at which what it goes into is ready
  int begun = 0; ///< and begun
  std::optional<std::size_t> session = {};
  /// The last day on which it is eaten unfrozen in whatever it went into, and how many days after
  /// it was made that may be at most.
  Date last;
  int within = 0;
  bool from_freezer = true;
};

class Supplies {
public:
  /// `order` has each recipe before those that it needs.
  Supplies(const kitchen::Kitchen& kitchen, const std::vector<RecipeId>& order,
           const Barred& barred);

  /// Whether some recipe of the kitchen gives it, or what may stand for it.
  [[nodiscard]] bool may_give(const kitchen::Target& what) const;
  /// What a making gives is there from now on.
  void add(const Making& making);
  /// Takes up to `amount` of it: of a food as purchased, in its basis, of a recipe in times as
  /// written. Gives how much of the amount that covers.
  Rational take(const kitchen::Target& what, const Rational& amount, const Ask& ask);

  std::vector<ByProduct> all() && { return std::move(all_); }

private:
  /// When a making is done, and whether it is eaten at once.
  struct Giver {
    RecipeId recipe{};
    std::optional<std::size_t> session;
    int ready_by = 0;
    bool eaten = false;
  };
  [[nodiscard]] Rational worth(const kitchen::Target& what) const;
  [[nodiscard]] bool is_there(const ByProduct& one, const Giver& giver, const Ask& ask) const;
  [[nodiscard]] bool is_barred(const ByProduct& one, const Giver& giver, const Ask& ask) const;

  const kitchen::Kitchen& kitchen_;
  const Barred& barred_;
  std::set<kitchen::Target> given_; ///< by any recipe
  std::vector<std::size_t> place_;  ///< by recipe, in the order of need
  std::vector<ByProduct> all_;
  std::vector<Giver> givers_; ///< by by-product
};

/// What it is, as the recipe of its making says it.
const kitchen::GivesLine& given_as(const kitchen::Kitchen& kitchen, const Resolved& resolved,
                                   const ByProduct& one);

/// What may be in it, with what other makings left over and went into its own.
Inside inside(const kitchen::Kitchen& kitchen, const Resolved& resolved, const ByProduct& one);

/// What one making of its recipe as written gives: of a food as purchased, in its basis; of a
/// recipe, in times as written. Nothing where the measure is not known of it.
std::optional<Rational> amount_given(const kitchen::Kitchen& kitchen,
                                     const kitchen::GivesLine& given);

/// What is taken and should not be: too old for what it goes into, or with something in it that an
/// eater must not have. `why` gets a remark for each of the latter.
std::set<Barred::One> not_fit(const kitchen::Kitchen& kitchen, const Resolved& resolved,
                              text::Diagnostics& why);

/// Whether nobody of the household and no guest has to avoid anything that may be in it.
bool is_for_all(const kitchen::Kitchen& kitchen, const Resolved& resolved, const ByProduct& one);

/// Labels to read because of what was in the dish that by-products are of; a food that is nothing
/// but a by-product, and always taken as such, has no label of its own.
void add_labels(const kitchen::Kitchen& kitchen, Resolved& resolved);

} // namespace manciple::resolve
