// write_cases COUNT FILE: generated expressions with Stile's answers, for the reference engine.
#include <cstdlib>
#include <fstream>
#include <iostream>

#include "case_writer.h"

int main(int argumentCount, char** arguments) {
  using namespace stile::differential;
  const int count = argumentCount == 3 ? std::atoi(arguments[1]) : 0;
  if (count <= 0) {
    std::cerr << "write_cases COUNT FILE\n";
    return 2;
  }
  Counts counts;
  const std::string text = writeCases(kSeed, count, counts);
  std::ofstream out(arguments[2], std::ios::binary);
  out << text;
  out.close();
  if (!out) {
    std::cerr << arguments[2] << " could not be written\n";
    return 4;
  }
  std::cout << counts.cases << " cases (seed " << kSeed << "): " << counts.answered << " with an answer, "
            << counts.empty << " empty, " << counts.refused << " refused\n";
  return 0;
}
