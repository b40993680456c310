// SPDX-License-Identifier: GPL-3.0-or-later
//
// Runs the tests in the locale of the environment, so that tests/run.sh can run them where a comma is the
// decimal mark.
#include <gtest/gtest.h>

#include <clocale>

int main(int argc, char** argv) {
  std::setlocale(LC_ALL, "");
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
