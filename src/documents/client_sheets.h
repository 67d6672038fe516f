// Sheets beside the handout: the plan week by week, the record to fill in at home, and a page for
// whoever helps. Each goes out only with a plan.
#pragma once

#include <optional>

#include "documents/client_paper.h"
#include "documents/document.h"

namespace stile::documents {

/// The first week to tick, and the weeks after it.
std::optional<Document> weekPlanOf(const ClientRequest& request);
/// Two weeks of lines to fill in, with the values that are to be measured.
std::optional<Document> recordSheetOf(const ClientRequest& request);
/// What a carer should know: stop signs, checks, what is left out, how to help.
std::optional<Document> carerSheetOf(const ClientRequest& request);

/// The grid of a week to tick off; its heading says for which weeks the days hold.
Section weekSection(const plan::StarterPlan& plan, const limits::Limits& limits, const HandoutTexts& texts);

/// The weeks ahead as a table; those with the same words stand together.
Table weeksTable(const plan::StarterPlan& plan, const HandoutTexts& texts);

}  // namespace stile::documents
