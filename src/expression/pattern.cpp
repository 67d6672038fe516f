#include "expression/pattern.h"

#include <re2/re2.h>

#include <algorithm>
#include <vector>

namespace stile::expression {

struct Pattern::Compiled {
  Compiled(const std::string& text, const re2::RE2::Options& options) : regex(text, options) {}
  re2::RE2 regex;
};

Pattern::Pattern() = default;
Pattern::~Pattern() = default;

namespace {

re2::StringPiece piece(std::string_view text) {
  return {text.data(), text.size()};
}

/// Named groups are written `(?<name>` in FHIRPath's dialect, `(?P<name>` in RE2.
std::string inDialect(std::string_view text) {
  std::string result;
  bool isEscaped = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    result += text[i];
    const bool isGroup = !isEscaped && text.substr(i).starts_with("(?<");
    const char next = i + 3 < text.size() ? text[i + 3] : '\0';
    if (isGroup && next != '=' && next != '!') {
      result += "?P<";
      i += 2;
    }
    isEscaped = !isEscaped && text[i] == '\\';
  }
  return result;
}

/// The group `$…` at the start of `text` names, and how many bytes it takes; -1: none.
struct GroupReference {
  int group = -1;
  std::size_t length = 0;
};

GroupReference reference(std::string_view text, const re2::RE2& regex) {
  if (text.size() < 2) return {};
  if (text[1] >= '0' && text[1] <= '9') {
    int group = text[1] - '0';
    std::size_t length = 2;
    // A second digit counts where there are so many groups.
    if (text.size() > 2 && text[2] >= '0' && text[2] <= '9') {
      const int longer = group * 10 + (text[2] - '0');
      if (longer <= regex.NumberOfCapturingGroups()) {
        group = longer;
        length = 3;
      }
    }
    return group <= regex.NumberOfCapturingGroups() ? GroupReference{group, length} : GroupReference{};
  }
  if (text[1] != '{' && text[1] != '<') return {};
  const std::size_t end = text.find(text[1] == '{' ? '}' : '>');
  if (end == std::string_view::npos) return {};
  const std::string name(text.substr(2, end - 2));
  const auto found = regex.NamedCapturingGroups().find(name);
  if (found == regex.NamedCapturingGroups().end()) return {};
  return {found->second, end + 1};
}

}  // namespace

std::shared_ptr<const Pattern> Pattern::compile(std::string_view text, std::string& reason, bool ignoresCase,
                                                bool isMultiline) {
  if (text.size() > kMaxPatternBytes) {
    reason = "the pattern is longer than " + std::to_string(kMaxPatternBytes) + " bytes";
    return nullptr;
  }
  re2::RE2::Options options(re2::RE2::Quiet);
  options.set_dot_nl(true);
  options.set_case_sensitive(!ignoresCase);
  options.set_max_mem(static_cast<std::int64_t>(kMaxPatternMemory));
  std::shared_ptr<Pattern> pattern(new Pattern);
  const std::string dialect = (isMultiline ? "(?m)" : "") + inDialect(text);
  pattern->compiled_ = std::make_unique<Compiled>(dialect, options);
  if (!pattern->compiled_->regex.ok()) {
    reason = "the pattern cannot be used: " + pattern->compiled_->regex.error();
    return nullptr;
  }
  return pattern;
}

bool Pattern::isFoundIn(std::string_view text) const {
  return re2::RE2::PartialMatch(piece(text), compiled_->regex);
}

bool Pattern::matches(std::string_view text) const {
  return re2::RE2::FullMatch(piece(text), compiled_->regex);
}

std::optional<std::string> Pattern::replaceAll(std::string_view text, std::string_view substitution,
                                               std::size_t longest) const {
  const re2::RE2& regex = compiled_->regex;
  std::vector<re2::StringPiece> groups(static_cast<std::size_t>(regex.NumberOfCapturingGroups()) + 1);
  std::string result;
  std::size_t from = 0;  // where the next search starts
  std::size_t copied = 0;
  while (from <= text.size() && regex.Match(piece(text), from, text.size(), re2::RE2::UNANCHORED,
                                            groups.data(), static_cast<int>(groups.size()))) {
    const auto begin = static_cast<std::size_t>(groups[0].data() - text.data());
    const std::size_t end = begin + groups[0].size();
    result += text.substr(copied, begin - copied);
    for (std::size_t i = 0; i < substitution.size();) {
      if (substitution[i] == '$') {
        if (substitution.substr(i).starts_with("$$")) {
          result += '$';
          i += 2;
          continue;
        }
        const GroupReference found = reference(substitution.substr(i), regex);
        if (found.group >= 0) {
          const re2::StringPiece& group = groups[static_cast<std::size_t>(found.group)];
          if (group.data()) result.append(group.data(), group.size());
          i += found.length;
          continue;
        }
      }
      result += substitution[i++];
    }
    if (result.size() > longest) return std::nullopt;
    copied = end;
    from = end;
    if (begin == end) {
      // An empty match: on with the next character, which is kept.
      std::size_t next = end + 1;
      while (next < text.size() && (static_cast<unsigned char>(text[next]) & 0xC0) == 0x80) ++next;
      if (end < text.size()) result += text.substr(end, std::min(next, text.size()) - end);
      copied = from = std::min(next, text.size() + 1);
      if (end == text.size()) break;
    }
  }
  if (copied < text.size()) result += text.substr(copied);
  if (result.size() > longest) return std::nullopt;
  return result;
}

}  // namespace stile::expression
