// SPDX-License-Identifier: GPL-3.0-or-later
//
// The Cranfield 1400 collection: abstracts of papers on aerodynamics, questions, and which
// paper answers which question. Read from cran.all.1400, cran.qry and cranqrel of the folder "cranfield" of
// the outside data, byte-exact as the University of Glasgow gave them out; SOURCE.txt beside them says more.
// A question's number in cranqrel is its place in cran.qry, not the number it bears there.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace insetbook {

struct CranfieldPaper {
  int number = 0;
  std::string title, abstract;  // the abstract begins with the title; two papers have neither
};

// What was judged of the papers for one question: 1 (a complete answer) to 4 (of minimum interest), or -1,
// which the collection does not explain and which many count as relevant.
using Judged = std::map<int, int>;

struct Cranfield {
  std::vector<CranfieldPaper> papers;
  std::vector<std::string> questions;
  std::vector<Judged> judged;  // one for each question
};

std::optional<Cranfield> cranfield();  // nothing where the data is not there

}  // namespace insetbook
