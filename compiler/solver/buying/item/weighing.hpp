#pragma once

#include "buying/item/service.hpp"

#include <vector>

namespace manciple::buying {

/// How much to weigh out: nobody weighs half of what a meal takes and buys the other half
/// elsewhere. What is bought of an offer by weight is what the demands up to one of them take of it
/// if nothing else is bought after that (packs are bought before anything is weighed at a stop):
/// either with what is good unfrozen used first, or with all else that is held used first. What
/// they may lack is weighed out, too. Where the offer's limit is less than that, it may be the
/// limit. What the scale rounds up to its next step is paid for, but not counted on: it is eaten
/// with the rest.
class Weighing {
public:
  explicit Weighing(const Prepared& item) : item_(item), service_(item, Lots::apart) {}

  struct Weighed {
    int steps = 0;
    Amount amount = 0;
  };
  /// From low to high, with `begin` ... `end` held at a visit; of each number of steps once, the
  /// most. One step if it is `required` and of no use. Good until the next call.
  const std::vector<Weighed>& choices(const Holding* begin, const Holding* end, std::size_t visit,
                                      std::size_t source, bool required = false);
  /// What so many steps are.
  Amount amount(const Holdings& held, std::size_t visit, std::size_t source, int steps);

private:
  /// Adds up what is taken of what would be bought.
  struct TakenTrack : BlankTrack {
    std::uint32_t source = 0;
    std::size_t demand = 0;
    Amount taken = 0;
    Amount lent = 0;
    /// By demand.
    std::vector<Amount> so_far;

    void note() {
      if (taken + lent > (so_far.empty() ? 0 : so_far.back())) {
        so_far.push_back(taken + lent);
      }
    }
    void turn_to(std::size_t next) {
      if (next != demand) {
        note();
        demand = next;
      }
    }
    void take(const Holding& held, std::size_t d, Amount amount, Way) {
      turn_to(d);
      taken += held.source == source ? amount : 0;
    }
    void lend(const Holding& held, std::size_t d, Amount amount, Way) {
      turn_to(d);
      lent += held.source == source ? amount : 0;
    }
    void take_back(const Holding& held, Amount amount) {
      lent -= held.source == source ? amount : 0;
    }
  };

  void find(const Holding* begin, const Holding* end, std::size_t visit, std::size_t source);

  const Prepared& item_;
  Service<TakenTrack> service_;
  Branch<TakenTrack> branch_;
  std::vector<Weighed> choices_;
};

} // namespace manciple::buying
