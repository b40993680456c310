// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/xml.h"

#include <gtest/gtest.h>

namespace insetbook {
namespace {

TEST(Xml, ReadsElementsAttributesAndText) {
  const auto root = read_xml(
      "<?xml version=\"1.0\"?>\n<s:svg xmlns:s=\"x\" s:label=\"one &amp; two\" id='a'>\n"
      " <g/><title>A <b>bold</b>name</title></s:svg>");
  ASSERT_TRUE(root) << root.error().what;
  EXPECT_EQ(root->name, "svg");
  EXPECT_EQ(root->value("label"), "one & two");
  EXPECT_EQ(root->value("id"), "a");
  EXPECT_EQ(root->attribute("none"), nullptr);
  EXPECT_EQ(root->value("none"), "");
  ASSERT_EQ(root->children.size(), 2u);
  EXPECT_EQ(root->children[0].line, 3);
  EXPECT_EQ(root->children[1].text, "A name");
  EXPECT_EQ(root->children[1].children[0].text, "bold");
}

TEST(Xml, ADoctypeWithoutEntitiesIsNoMatter) {
  const auto root =
      read_xml("<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" \"http://example.org/svg11.dtd\"><svg/>");
  ASSERT_TRUE(root) << root.error().what;
  EXPECT_EQ(root->name, "svg");
}

struct Refused {
  std::string bytes, what, expected;
};

TEST(Xml, RefusesWithTheLine) {
  std::string deep = "<svg>", rich = "<svg>";
  for (std::size_t i = 0; i < deepest_element; ++i) deep += "<g>";
  for (std::size_t i = 0; i < most_elements; ++i) rich += "<g/>";
  const Refused all[] = {
      {"", "line 1: this is no XML: no element found", "a drawing in SVG, whole"},
      {"<svg>\n<g></svg>", "line 2: this is no XML: mismatched tag", "a drawing in SVG, whole"},
      {"<svg>\n", "line 2: this is no XML: no element found", "a drawing in SVG, whole"},
      {"<svg a=\"1\" a=\"2\"/>", "line 1: this is no XML: duplicate attribute", "a drawing in SVG, whole"},
      {"<svg>&nothing;</svg>", "line 1: this is no XML: undefined entity", "a drawing in SVG, whole"},
      {"<!DOCTYPE svg [\n<!ENTITY a \"aaaa\">]><svg>&a;</svg>",
       "line 2: the drawing declares an entity, \"a\"", "a drawing without entities of its own"},
      {"<!DOCTYPE svg [<!ENTITY a SYSTEM \"file:///etc/passwd\">]><svg>&a;</svg>",
       "line 1: the drawing declares an entity, \"a\"", "a drawing without entities of its own"},
      {deep, "line 1: elements lie in one another too deeply", "at most 64 of them"},
      {rich, "line 1: the drawing has too many elements", "at most 50000"},
      {std::string(largest_drawing + 1, ' '), "the drawing is larger than 16 MB",
       "a drawing of the dies alone, without pictures in it"},
  };
  for (const Refused& one : all) {
    const auto root = read_xml(one.bytes);
    ASSERT_FALSE(root) << one.what;
    EXPECT_EQ(root.error().what, one.what);
    EXPECT_EQ(root.error().expected, one.expected);
  }
}

TEST(Xml, DeepestAndRichestAreTaken) {
  std::string deep, rich = "<svg>";
  for (std::size_t i = 0; i < deepest_element; ++i) deep += "<g>";
  for (std::size_t i = 0; i < deepest_element; ++i) deep += "</g>";
  for (std::size_t i = 0; i + 1 < most_elements; ++i) rich += "<g/>";
  EXPECT_TRUE(read_xml(deep));
  EXPECT_TRUE(read_xml(rich + "</svg>"));
}

}  // namespace
}  // namespace insetbook
