#include "application/compare_content.h"

#include <map>

#include "application/stored_inputs.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;
using screening::Screening;
using Lines = std::map<std::string, std::string>;

Lines decisionOf(const Screening& screening) {
  Lines lines{{"action", limits::idOf(screening.reach.limits.action)}};
  for (const auto bay : limits::kBays) {
    const std::string name = limits::idOf(bay);
    lines[name + ", sure so far"] = limits::idOf(screening.floor.usable[bay]);
    lines[name + ", still possible"] = limits::idOf(screening.reach.usable[bay]);
    lines[name + ", clearance"] = limits::idOf(screening.reach.limits.clearance[bay]);
  }
  return lines;
}

Lines findingsOf(const Screening& screening) {
  Lines lines;
  for (const auto& finding : screening.findings) {
    const std::string standing = finding.standing == rules::Standing::Certain ? "certain" : "open";
    lines[finding.rule->title + (finding.where.empty() ? "" : ", " + finding.where)] = standing + ": " + finding.say.clinician;
  }
  return lines;
}

Lines exercisesOf(const Screening& screening) {
  Lines lines;
  const auto& plan = screening.plan ? screening.plan : screening.heldPlan;
  if (!plan) return lines;
  for (const auto& line : plan->lines) lines[line.exercise->title] += lines[line.exercise->title].empty() ? "in the plan" : ", again";
  return lines;
}

std::vector<Changed> differencesOf(const Lines& before, const Lines& after) {
  Lines names = before;
  names.insert(after.begin(), after.end());
  std::vector<Changed> changed;
  for (const auto& [name, ignored] : names) {
    const auto was = before.find(name), is = after.find(name);
    const std::string then = was == before.end() ? "" : was->second, now = is == after.end() ? "" : is->second;
    if (then != now) changed.push_back({name, then, now});
  }
  return changed;
}

/// The draft counts before the last screening: it is what will be decided next.
const records::Entry* answersOnRecord(const RecordWork& work) {
  const records::Entry* last = nullptr;
  for (const auto& entry : work.entries())
    if (entry.kind == "screening") last = &entry;
  for (const auto& entry : work.entries())
    if (entry.kind == records::kDraftKind) last = &entry;
  return last;
}

}  // namespace

base::Result<ContentComparison> compareContent(Clinic& clinic, const std::string& id, const screening::Content& before, const screening::Content& after,
                                               base::Date today) {
  const auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  const auto* entry = answersOnRecord(opened.value());
  if (entry == nullptr) return Failure{FailureKind::Usage, "there are no answers of this client to compare with"};
  auto inputs = StoredInputs(entry->body).inputsOn(today);
  std::erase_if(inputs, [](const Input& input) { return input.name.rfind(kReplyInput, 0) == 0; });
  for (Input& reply : repliesOnRecord(opened.value())) inputs.push_back(std::move(reply));
  const auto screened = [&](const screening::Content& content) {
    base::Issues askedBack;
    auto made = screenClient(content, inputs, today, askedBack);
    if (made) return made;
    return base::Result<Screening>(Failure{FailureKind::Refused, "the client's answers cannot be read with content " + content.version + ": " + made.failure().message});
  };
  const auto old = screened(before), now = screened(after);
  if (!old) return old.failure();
  if (!now) return now.failure();
  return ContentComparison{before.version,
                           after.version,
                           today,
                           differencesOf(decisionOf(old.value()), decisionOf(now.value())),
                           differencesOf(findingsOf(old.value()), findingsOf(now.value())),
                           differencesOf(exercisesOf(old.value()), exercisesOf(now.value()))};
}

std::string toText(const ContentComparison& one) {
  std::string text = "Content " + one.before + " against " + one.after + ", on " + one.day.toText() + "\n";
  const std::pair<const char*, const std::vector<Changed>*> parts[] = {{"Decision", &one.decision}, {"Findings", &one.findings}, {"Exercises", &one.exercises}};
  for (const auto& [title, lines] : parts) {
    if (!lines->empty()) text += std::string(title) + "\n";
    for (const Changed& line : *lines) text += "  " + line.what + ": " + (line.before.empty() ? "-" : line.before) + " -> " + (line.now.empty() ? "-" : line.now) + "\n";
  }
  return text + (one.isSame() ? "Nothing changes for this client.\n" : "");
}

}  // namespace stile::application
