#include <algorithm>
#include <boost/json/parse.hpp>
#include <numeric>

#include "json/node_data.h"

namespace stile::json {
namespace {

// A file made to be wrong everywhere must not fill the memory with complaints.
constexpr std::size_t kMaxIssues = 100;

std::string shortened(std::string_view text) {
  constexpr std::size_t kShown = 40;
  return text.size() <= kShown ? std::string(text) : std::string(text.substr(0, kShown)) + "…";
}

}  // namespace

Node::Data Node::Data::Builder::build() {
  skipSpace();
  return value();
}

void Node::Data::Builder::skipSpace() {
  for (; at_ < text_.size(); ++at_) {
    const char c = text_[at_];
    if (c == '\n') {
      ++line_;
    } else if (c != ' ' && c != '\t' && c != '\r') {
      break;
    }
  }
}

Node::Data Node::Data::Builder::value() {
  Data data;
  data.begin = at_;
  data.line = line_;
  switch (text_[at_]) {
    case '{':
      data.kind = Kind::Object;
      object(data);
      break;
    case '[':
      data.kind = Kind::Array;
      array(data);
      break;
    case '"':
      data.kind = Kind::String;
      data.text = string();
      break;
    case 't':
    case 'f':
      data.kind = Kind::Boolean;
      data.boolean = text_[at_] == 't';
      at_ += data.boolean ? 4 : 5;
      break;
    case 'n':
      at_ += 4;
      break;
    default:
      data.kind = Kind::Number;
      number(data);
      break;
  }
  data.end = at_;
  return data;
}

void Node::Data::Builder::object(Data& data) {
  ++at_;
  skipSpace();
  while (text_[at_] != '}') {
    Key key;
    key.begin = at_;
    key.line = line_;
    key.name = string();
    skipSpace();
    ++at_;  // the colon
    skipSpace();
    path_.push_back(key.name);
    data.keys.push_back(std::move(key));
    data.children.push_back(value());
    path_.pop_back();
    skipSpace();
    if (text_[at_] == ',') ++at_;
    skipSpace();
  }
  ++at_;
  sortKeys(data);
}

void Node::Data::Builder::sortKeys(Data& data) {
  data.byKey.resize(data.keys.size());
  std::iota(data.byKey.begin(), data.byKey.end(), std::size_t{0});
  const auto name = [&](std::size_t i) -> const std::string& { return data.keys[i].name; };
  std::stable_sort(data.byKey.begin(), data.byKey.end(),
                   [&](std::size_t a, std::size_t b) { return name(a) < name(b); });
  std::vector<std::pair<std::size_t, std::size_t>> repeated;  // the later one, the earlier one
  for (std::size_t i = 1; i < data.byKey.size(); ++i) {
    if (name(data.byKey[i]) == name(data.byKey[i - 1]))
      repeated.emplace_back(data.byKey[i], data.byKey[i - 1]);
  }
  std::sort(repeated.begin(), repeated.end());
  for (const auto& [later, earlier] : repeated) {
    path_.push_back(name(later));
    issue(data.keys[later].begin, "the key \"" + shortened(name(later)) + "\" stands twice in one object",
          "keep one of the two; the first is on line " + std::to_string(data.keys[earlier].line));
    path_.pop_back();
  }
}

void Node::Data::Builder::array(Data& data) {
  ++at_;
  skipSpace();
  while (text_[at_] != ']') {
    path_.push_back(std::to_string(data.children.size()));
    data.children.push_back(value());
    path_.pop_back();
    skipSpace();
    if (text_[at_] == ',') ++at_;
    skipSpace();
  }
  ++at_;
}

void Node::Data::Builder::number(Data& data) {
  const std::size_t end = std::min(text_.find_first_not_of("+-.0123456789eE", at_), text_.size());
  data.text = std::string(text_.substr(at_, end - at_));
  if (!base::Rational::parse(data.text)) {
    issue(at_, "the number " + shortened(data.text) + " does not fit",
          "write it with at most 34 digits and an exponent within 30, or as a string");
  }
  at_ = end;
}

std::string Node::Data::Builder::string() {
  const std::size_t open = at_;
  bool hasEscape = false;
  for (++at_; text_[at_] != '"'; ++at_) {
    if (text_[at_] == '\\') {
      hasEscape = true;
      ++at_;
    }
  }
  ++at_;
  if (!hasEscape) return std::string(text_.substr(open + 1, at_ - open - 2));
  const auto token = text_.substr(open, at_ - open);
  const boost::json::value decoded = boost::json::parse({token.data(), token.size()});
  return std::string(decoded.get_string().data(), decoded.get_string().size());
}

void Node::Data::Builder::issue(std::size_t offset, std::string message, std::string remedy) {
  if (++issueCount_ > kMaxIssues) return;
  if (issueCount_ == kMaxIssues) {
    message = "there are more troubles of this kind, which are not listed";
    remedy = "mend those above first";
  }
  issues_.error(base::placeAt(file_, text_, offset), pointer(), std::move(message), std::move(remedy));
}

/// JSON Pointer (RFC 6901) of the value at hand.
std::string Node::Data::Builder::pointer() const {
  std::string result;
  for (const std::string& step : path_) {
    result += '/';
    for (const char c : step) {
      if (c == '~') {
        result += "~0";
      } else if (c == '/') {
        result += "~1";
      } else {
        result += c;
      }
    }
  }
  return result;
}

}  // namespace stile::json
