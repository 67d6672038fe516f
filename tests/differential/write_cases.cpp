// write_cases COUNT FILE [SEED]: generated expressions with Stile's answers, for the reference engine.
#include <cstdlib>
#include <fstream>
#include <iostream>

#include "case_writer.h"

int main(int argumentCount, char** arguments) {
  using namespace stile::differential;
  const bool isRight = argumentCount == 3 || argumentCount == 4;
  const int count = isRight ? std::atoi(arguments[1]) : 0;
  if (count <= 0) {
    std::cerr << "write_cases COUNT FILE [SEED]\n";
    return 2;
  }
  Counts counts;
  const unsigned seed = argumentCount == 4 ? static_cast<unsigned>(std::atoi(arguments[3])) : kSeed;
  const std::string text = writeCases(seed, count, counts);
  std::ofstream out(arguments[2], std::ios::binary);
  out << text;
  out.close();
  if (!out) {
    std::cerr << arguments[2] << " could not be written\n";
    return 4;
  }
  std::cout << counts.cases << " cases (seed " << seed << "): " << counts.answered << " with an answer, "
            << counts.empty << " empty, " << counts.refused << " refused\n";
  return 0;
}
