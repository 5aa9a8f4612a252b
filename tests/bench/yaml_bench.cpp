// What yaml-cpp alone needs for the files of a house: each is read to its nodes, so many times.
// Prints milliseconds of processor time for one reading of all of them.
//
//   yaml_bench TIMES FILE...

#include <yaml-cpp/yaml.h>

#include <ctime>
#include <iostream>
#include <string>

int main(int argc, char** argv) {
  if (argc < 3) {
    std::cerr << "usage: yaml_bench TIMES FILE...\n";
    return 2;
  }
  const int times = std::stoi(argv[1]);
  const std::clock_t begin = std::clock();
  std::size_t read = 0;
  for (int i = 0; i < times; ++i) {
    for (int file = 2; file < argc; ++file) {
      read += YAML::LoadFile(argv[file]).size();
    }
  }
  const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  std::cout << 1000.0 * seconds / times << "\n";
  return read > 0 ? 0 : 1;
}
