// The list of pages. One line a page; the order is that of the fence.
#include "desktop/client_mode_page.h"
#include "desktop/client_page.h"
#include "desktop/clinic_page.h"
#include "desktop/decision_page.h"
#include "desktop/history_page.h"
#include "desktop/interview_page.h"
#include "desktop/measurement_page.h"
#include "desktop/page.h"
#include "desktop/papers_page.h"
#include "desktop/plan_page.h"
#include "desktop/rules_page.h"
#include "desktop/set_up_page.h"
#include "desktop/start_page.h"
#include "desktop/today_page.h"

namespace stile::desktop {
namespace {

template <class P>
Page* make(wxWindow* parent, Workplace& place) {
  return new P(parent, place);
}

bool hasClient(const Desk& desk) { return desk.client() != nullptr; }
bool isAsking(const Desk& desk) { return desk.isAsking(); }
bool hasClinic(const Desk& desk) { return desk.clinic() != nullptr; }

}  // namespace

const std::vector<PageKind>& pageKinds() {
  static const std::vector<PageKind> kKinds{
      {"start", "Start", false, {}, make<StartPage>},
      {"setUp", "Set up", false, {}, make<SetUpPage>},
      {"clientMode", "For the client", false, isAsking, make<ClientModePage>},
      {"clinic", "The clinic", false, hasClinic, make<ClinicPage>},
      {"today", "Today", true, hasClinic, make<TodayPage>},
      {"client", "Client", true, hasClinic, make<ClientPage>},
      {"interview", "Interview", true, hasClient, make<InterviewPage>},
      {"decision", "Decision", true, hasClient, make<DecisionPage>},
      {"plan", "Plan", true, hasClient, make<PlanPage>},
      {"papers", "Papers", true, hasClient, make<PapersPage>},
      {"tests", "Tests", true, hasClient, make<MeasurementPage>},
      {"history", "History", true, hasClient, make<HistoryPage>},
      {"rules", "Rules", true, hasClinic, make<RulesPage>},
  };
  return kKinds;
}

}  // namespace stile::desktop
