// Who waits for whom, since when, and what is next: of one client, and of all.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "records/client_record.h"
#include "records/follow_up_policy.h"

namespace stile::records {

/// Something to be done. `what` is one of taskIds(), or "chase" or "contact" with the step of the
/// policy that is next.
struct Task {
  std::string what;
  int step = 0;
  std::string waitingFor;  ///< "us", a physician's name, "a second clinician", "the client"
  base::Date since;
  base::Date due;

  bool operator==(const Task&) const = default;
};

/// A sentence for the clinician, out of the policy.
std::string nextOf(const Task& task, const FollowUpPolicy& policy);

/// All tasks that the record holds, whatever the day; the earliest due first, emergencies before all.
/// A deceased client has none; a discharged one only what must not be left open.
std::vector<Task> tasksOf(const ClientRecord& record, const FollowUpPolicy& policy);

/// What is kept in memory of every client, for search and the worklist; written in the record's
/// sealed header.
struct Card {
  std::string given, family, born, record, telephone, state, mergedInto;
  std::vector<Task> tasks;

  std::string name() const { return given + " " + family; }
};
Card cardOf(const ClientRecord& record, const FollowUpPolicy& policy);
std::string toText(const Card& card);
std::optional<Card> cardFrom(std::string_view text);

/// Where the client stands in the plan of the last screening; nullopt when it was not begun. Whether it
/// waits is planWaitsBecause()'s to say.
std::optional<PlanStand> planStand(const ClientRecord& record, const FollowUpPolicy& policy, base::Date today);

/// Why a plan must wait whatever the rules said on the day they were asked; "" when nothing.
std::string planWaitsBecause(const ClientRecord& record, base::Date today);

}  // namespace stile::records
