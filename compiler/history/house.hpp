#pragma once

#include "history/past.hpp"

#include <map>

namespace manciple::history {

/// What is in the house while days go by. Writes what comes and goes into a `Past`.
class House {
public:
  House(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved, Date until, Past& past);

  /// What was counted on a day is there.
  void count(Date date);
  /// What was counted later takes the place of what should be there.
  void correct(const kitchen::OnHand& count);
  /// A day begins: what is past its last day is thrown away.
  void morning(Date date);
  /// What was bought comes home and is frozen or put away.
  void bring_home(const kitchen::Receipt& receipt, int clock);
  /// A use of the plan.
  void use(std::size_t index);
  /// What was eaten or thrown away besides.
  void change(const kitchen::Change& change);

  [[nodiscard]] std::vector<Holding> there() const;

private:
  /// What is asked for: how much, in terms of the first of the foods that stand for each other.
  struct Want {
    foods::FoodId first{};
    Rational amount;
    Rational give; ///< of it: no pack is opened for that
    Date date;
    bool from_freezer = true;
    std::optional<Rational> container; ///< what a usual one holds, if it is asked for by it
    std::optional<std::size_t> use = {};
  };
  [[nodiscard]] Want want_of(const resolve::Use& use) const;
  [[nodiscard]] Rational spared(std::size_t use) const;
  [[nodiscard]] std::vector<std::size_t> in_order(const std::vector<Holding>& from,
                                                  const Want& want) const;
  Rational take(std::vector<Holding>& from, const Want& want, std::vector<Move>* moves) const;
  [[nodiscard]] Rational worth(foods::FoodId food) const {
    return kitchen_.household.in_terms_of(food).worth;
  }
  [[nodiscard]] foods::FoodId first_of(foods::FoodId food) const {
    return kitchen_.household.in_terms_of(food).food;
  }
  [[nodiscard]] std::optional<int> freezes(const Holding& holding) const;
  [[nodiscard]] Rational eaten_too_late(std::size_t holding, Date date, int clock) const;
  void freeze(std::size_t holding, const Rational& amount, Date date);
  void move(Move move);
  void bring(const std::vector<kitchen::StockLot>& lots, Date date);
  [[nodiscard]] std::map<foods::FoodId, Difference> expected(Date date) const;
  void price(std::map<foods::FoodId, Difference>& differences) const;
  void say_gone(const kitchen::Gone& gone, std::map<foods::FoodId, Difference>& differences,
                Date date);
  [[nodiscard]] Rational cut_for_later(foods::FoodId food, Date date) const;

  const kitchen::Kitchen& kitchen_;
  const resolve::Resolved& resolved_;
  Date until_;
  Past& past_;
  /// The uses of a food and of what it stands for, by date.
  std::map<foods::FoodId, std::vector<std::size_t>> uses_;
  std::vector<Holding> there_;
};

} // namespace manciple::history
