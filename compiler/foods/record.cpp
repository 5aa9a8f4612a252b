#include "foods/record.hpp"

#include <cmath>
#include <cstring>
#include <stdexcept>
#include <type_traits>

namespace manciple::foods {
namespace {

class Writer {
public:
  std::string bytes;

  template <typename T>
  requires std::is_integral_v<T> || std::is_enum_v<T>
  void operator()(const T& value) {
    const auto wide = static_cast<std::int64_t>(value);
    char raw[sizeof wide];
    std::memcpy(raw, &wide, sizeof wide);
    bytes.append(raw, sizeof wide);
  }
  void operator()(const std::string& text) {
    (*this)(text.size());
    bytes += text;
  }
  void operator()(const Rational& number) {
    (*this)(measure::to_int64(numerator(number)));
    (*this)(measure::to_int64(denominator(number)));
  }
  template <typename T>
  std::size_t size_of(std::vector<T>& list) {
    (*this)(list.size());
    return list.size();
  }
  template <typename T>
  bool has(std::optional<T>& value) {
    (*this)(value.has_value());
    return value.has_value();
  }
};

class RecordReader {
public:
  explicit RecordReader(std::string_view bytes) : rest_(bytes) {}

  template <typename T>
  requires std::is_integral_v<T> || std::is_enum_v<T>
  void operator()(T& value) {
    std::int64_t wide = 0;
    std::memcpy(&wide, take(sizeof wide).data(), sizeof wide);
    value = static_cast<T>(wide);
  }
  void operator()(std::string& text) {
    std::size_t size = 0;
    (*this)(size);
    text = take(size);
  }
  void operator()(Rational& number) {
    std::int64_t top = 0;
    std::int64_t bottom = 1;
    (*this)(top);
    (*this)(bottom);
    number = Rational(top, bottom);
  }
  template <typename T>
  std::size_t size_of(std::vector<T>& list) {
    std::size_t size = 0;
    (*this)(size);
    list.resize(size);
    return size;
  }
  template <typename T>
  bool has(std::optional<T>& value) {
    bool there = false;
    (*this)(there);
    if (there) {
      value.emplace();
    }
    return there;
  }

private:
  std::string_view take(std::size_t size) {
    if (size > rest_.size()) {
      throw std::logic_error("the embedded food data ends early");
    }
    const std::string_view out = rest_.substr(0, size);
    rest_.remove_prefix(size);
    return out;
  }
  std::string_view rest_;
};

// One description of a record serves both ways.
template <typename Archive>
void each_field(Archive& a, Sourced<int>& s) {
  a(s.value);
  a(s.source);
}
template <typename Archive>
void each_field(Archive& a, Sourced<SafeTemperature>& s) {
  a(s.value.fahrenheit);
  a(s.value.rest_minutes);
  a(s.source);
}
template <typename Archive>
void each_field(Archive& a, VolumeWeight& v) {
  a(v.form);
  a(v.unit);
  a(v.grams);
  a(v.source);
}
template <typename Archive>
void each_field(Archive& a, Piece& p) {
  a(p.name);
  a(p.grams);
  a(p.as_purchased);
  a(p.source);
}
template <typename Archive>
void each_field(Archive& a, Yield& y) {
  a(y.form);
  a(y.share);
  a(y.source);
}
template <typename Archive>
void each_field(Archive& a, std::string& s) {
  a(s);
}
template <typename Archive>
void each_field(Archive& a, Allergen& s) {
  a(s);
}
template <typename Archive>
void each_field(Archive& a, DietClass& s) {
  a(s);
}
template <typename Archive>
void each_field(Archive& a, Class& s) {
  a(s);
}
template <typename Archive>
void each_field(Archive& a, Caution& s) {
  a(s);
}
template <typename Archive>
void each_field(Archive& a, RoastingTime& r) {
  a(r.pounds);
  a(r.fahrenheit);
  a(r.minutes_a_pound);
  a(r.source);
}
// In thousandths, which is as fine as the tables are; under 0 where there is no figure.
template <typename Archive>
void each_field(Archive& a, Nutrients& n) {
  for (std::optional<double>& figure : n.of) {
    auto thousandths = static_cast<std::int64_t>(std::llround(figure.value_or(-1) * 1000));
    a(thousandths);
    figure =
        thousandths < 0 ? std::nullopt : std::optional(static_cast<double>(thousandths) / 1000);
  }
}
template <typename Archive>
void each_field(Archive& a, UsdaForm& u) {
  a(u.form);
  a(u.number);
  if (a.has(u.nutrients)) {
    each_field(a, *u.nutrients);
  }
}

template <typename Archive, typename T>
void list(Archive& a, std::vector<T>& items) {
  a.size_of(items);
  for (T& item : items) {
    each_field(a, item);
  }
}
template <typename Archive, typename T>
void maybe(Archive& a, std::optional<T>& value) {
  if (a.has(value)) {
    each_field(a, *value);
  }
}

template <typename Archive>
void describe(Archive& a, Food& f) {
  a(f.name);
  list(a, f.aliases);
  a(f.department);
  if (a.has(f.usda)) {
    a(*f.usda);
  }
  if (a.has(f.usda_cooked)) {
    a(*f.usda_cooked);
  }
  list(a, f.usda_forms);
  a(f.stored);
  list(a, f.volumes);
  list(a, f.pieces);
  maybe(a, f.count_as);
  maybe(a, f.sold_as);
  maybe(a, f.in_packs);
  list(a, f.yields);
  maybe(a, f.keeps.pantry);
  maybe(a, f.keeps.fridge);
  maybe(a, f.keeps.freezer);
  maybe(a, f.keeps.opened);
  maybe(a, f.keeps.thawed);
  maybe(a, f.keeps.hard);
  maybe(a, f.keeps.cut);
  maybe(a, f.keeps.frozen_juice);
  if (a.has(f.freezes)) {
    a(*f.freezes);
  }
  a(f.freezes_for_cooking);
  a(f.thaw);
  maybe(a, f.ripens);
  maybe(a, f.soak);
  maybe(a, f.safe_at);
  list(a, f.roasts);
  if (a.has(f.allergens)) {
    list(a, f.allergens->contains);
    list(a, f.allergens->check_label);
  }
  a(f.shop_in);
  if (a.has(f.classes)) {
    list(a, f.classes->contains);
    list(a, f.classes->check_label);
    a(f.classes->source);
  }
  if (a.has(f.safety)) {
    list(a, f.safety->classes);
    a(f.safety->source);
  }
  if (a.has(f.expecting)) {
    list(a, f.expecting->classes);
    a(f.expecting->source);
  }
  maybe(a, f.nutrients);
  maybe(a, f.cooked);
  a(f.from_tap);
}

} // namespace

std::string to_bytes(const Food& food) {
  Writer writer;
  Food copy = food; // describe() serves reading too, so it takes its food by reference
  describe(writer, copy);
  return std::move(writer.bytes);
}

Food from_bytes(std::string_view bytes) {
  Food food;
  RecordReader reader(bytes);
  describe(reader, food);
  return food;
}

} // namespace manciple::foods
