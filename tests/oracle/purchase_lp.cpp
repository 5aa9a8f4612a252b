// Writes a model (see bench/model_text.hpp) from standard input as an LP file to standard output,
// for cbc, glpsol or any other solver that reads the CPLEX LP format.

#include <exception>
#include <iostream>

#include "bench/model_text.hpp"
#include "oracle/formulation.hpp"

int main() {
  try {
    const auto model = manciple::purchase::read_model(std::cin);
    std::cout << manciple::oracle::to_lp_file(manciple::oracle::formulate(model));
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 2;
  }
}
