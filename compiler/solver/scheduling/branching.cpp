#include "scheduling/branching.hpp"

#include <tuple>
#include <utility>

namespace manciple::scheduling {

bool Branching::hotter(std::size_t a, std::size_t b) const {
  return std::tuple(questions_[b].heat, a) < std::tuple(questions_[a].heat, b);
}

void Branching::rise(std::size_t place) {
  const std::size_t question = heap_[place];
  while (place > 0 && hotter(question, heap_[(place - 1) / 2])) {
    heap_[place] = heap_[(place - 1) / 2];
    questions_[heap_[place]].place = place;
    place = (place - 1) / 2;
  }
  heap_[place] = question;
  questions_[question].place = place;
}

void Branching::sink(std::size_t place) {
  const std::size_t question = heap_[place];
  for (std::size_t child = 2 * place + 1; child < heap_.size(); child = 2 * place + 1) {
    if (child + 1 < heap_.size() && hotter(heap_[child + 1], heap_[child])) {
      ++child;
    }
    if (!hotter(heap_[child], question)) {
      break;
    }
    heap_[place] = heap_[child];
    questions_[heap_[place]].place = place;
    place = child;
  }
  heap_[place] = question;
  questions_[question].place = place;
}

void Branching::insert(std::size_t question) {
  heap_.push_back(question);
  rise(heap_.size() - 1);
}

std::size_t Branching::take_hottest() {
  const std::size_t question = heap_.front();
  questions_[question].place = nowhere;
  const std::size_t last = heap_.back();
  heap_.pop_back();
  if (!heap_.empty()) {
    heap_.front() = last;
    sink(0);
  }
  return question;
}

void Branching::met(const std::vector<Bound>& bounds) {
  for (const Bound bound : bounds) {
    const Bound lower = bound.side % 2 == 0 ? bound : opposite(bound);
    const std::uint64_t key =
        (std::uint64_t{lower.side} << 32U) | static_cast<std::uint32_t>(lower.least);
    const auto [known, fresh] = known_.try_emplace(key, questions_.size());
    if (fresh) {
      questions_.push_back({lower.side, lower.least, 0, nowhere});
      insert(known->second);
    }
    Question& question = questions_[known->second];
    question.heat += step_;
    if (question.place != nowhere) {
      rise(question.place);
    }
  }
  if (step_ > 1e100) {
    for (Question& question : questions_) {
      question.heat *= 1e-100;
    }
    step_ *= 1e-100;
  }
}

void Branching::back(int level) {
  while (!asked_.empty() && asked_.back().level > level) {
    insert(asked_.back().question);
    asked_.pop_back();
  }
}

bool Branching::next(const Trail& trail, Bound& out) {
  while (!heap_.empty()) {
    const std::size_t i = take_hottest();
    const Question& question = questions_[i];
    const Bound bound{question.side, question.least};
    if (trail.holds(bound) || trail.fails(bound)) {
      asked_.push_back({i, trail.level()});
      continue;
    }
    asked_.push_back({i, trail.level() + 1});
    out = guide_[question.side / 2] >= question.least ? bound : opposite(bound);
    return true;
  }
  Side best = 0;
  bool found = false;
  for (Side side = 0; side < 2 * starts_; side += 2) {
    if (!trail.fixed(side) && (!found || std::pair(trail.at(side), -trail.at(other(side))) <
                                             std::pair(trail.at(best), -trail.at(other(best))))) {
      best = side;
      found = true;
    }
  }
  out = {other(best), -trail.at(best)};
  return found;
}

} // namespace manciple::scheduling
