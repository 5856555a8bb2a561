#include <whorl.hpp>

#include <fstream>
#include <iostream>
#include <iterator>

int main(int, char** argv) {
  std::ifstream file(argv[1]);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  std::cout << whorl::read(text).chart().svg();
}
