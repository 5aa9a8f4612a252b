#pragma once

#include "kitchen/plan.hpp"
#include "text/fields.hpp"

#include <map>

namespace manciple::kitchen {

/// Puts the parts of a plan's file into a plan.
class PlanReader {
public:
  PlanReader(Plan& plan, const PlanContext& context, text::Diagnostics& diagnostics)
      : plan_(plan), context_(context), diagnostics_(diagnostics) {}

  bool period(const text::Fields& fields);
  /// What `changes` say of a day goes before what the plan said.
  void meals(const std::vector<const text::Entry*>& entries,
             const std::vector<const text::Entry*>& changes);
  /// What was eaten or thrown away besides.
  void changes(const std::vector<const text::Entry*>& entries);
  void add_slots(const std::vector<const text::Entry*>& entries);
  void aims(const std::vector<const text::Entry*>& entries);
  void away(const text::Node& node);
  void guest(const text::Node& node);
  void staple(const text::Node& node);
  void extra(const text::Node& node);
  void trips(const std::vector<const text::Node*>& nodes);
  void usual_trips();
  void leave_out_closed(Trip& trip, bool named);
  void session(const text::Node& node);
  void cooks(const text::Node& node);

private:
  std::optional<text::Date> inside(const text::Node& node, int days_before = 0);
  std::vector<text::Date> days(const text::Node& key, int days_before = 0);
  std::vector<text::Date> dates_of(const text::Fields& fields, const text::Node& node,
                                   std::string_view what, int days_before = 0);
  std::vector<Candidate> all_shops();
  std::pair<text::Date, text::Date> span_of(const text::Fields& fields);
  std::vector<std::string> slots(const std::vector<const text::Node*>& list);
  bool is_known(const text::Node& who);
  std::optional<Variant> variant(const text::Entry& entry);
  std::optional<Swap> swap(const text::Node& node);
  std::optional<Aim> aim(const text::Entry& entry);
  bool aimed_at(const text::Node& what, Aim& aim);
  struct SaidMeal {
    int rank = 0;
    Meal meal;
  };
  using SaidMeals = std::map<std::pair<text::Date, std::size_t>, SaidMeal>;
  void meals_of(const text::Entry& entry, bool changed, SaidMeals& said);
  void dishes(const text::Node& value, Meal& meal);
  std::optional<Dish> dish(const text::Node& node);
  bool dish_words(const text::Node& node, Dish& dish);
  bool unknown_dish(const text::Node& node, std::string_view words, std::size_t offset, Dish& dish);
  std::optional<Ingredient> one(const text::Node& node, std::string_view words, std::size_t offset,
                                Names& names, bool free_text = false);
  std::optional<Trip> trip(const text::Node& node);
  std::vector<Candidate> stops(const std::vector<const text::Node*>& list);

  Plan& plan_;
  const PlanContext& context_;
  text::Diagnostics& diagnostics_;
};

} // namespace manciple::kitchen
