// An invented clinic in a file of its own, with one client.
#pragma once

#include <algorithm>
#include <memory>
#include <string>

#include "../store/sample_clinic.h"
#include "../support/content.h"
#include "application/client_interview.h"
#include "application/client_screening.h"
#include "application/client_signing.h"

namespace stile::test {

inline const base::Date kTarnsideDay = *base::Date::of(2026, 11, 25);

/// A clinic with one client; the session is opened and kept.
struct Tarnside {
  Tarnside() {
    take(application::Clinic::create({file, "ines", kInes, false}, {"ines", "Ines Calloway", "physiotherapist", records::Role::Clinician, false, false, {}}));
    open("ines", kInes);
    base::Issues issues;
    id = take(application::addClient(*clinic, R"({"given": "Maren", "family": "Oakshott", "born": "1963-03-14"})", "c.json", issues)).id;
  }

  void open(const std::string& handle, const std::string& passphrase) {
    clinic.reset();
    base::Issues issues;
    clinic = take(application::Clinic::open({file, handle, passphrase, false}, STILE_SOURCE_DIR, issues));
  }

  base::Result<std::string> put(const std::string& kind, std::string body) {
    for (char& c : body)
      if (c == '\'') c = '"';
    base::Issues issues;
    return application::fileEntry(*clinic, id, kind, body, "entry.json", application::overrideRulesOf(content()), issues);
  }

  application::Filed screen(const std::vector<application::Input>& inputs = {}, base::Date day = kTarnsideDay) {
    base::Issues issues;
    return take(application::screenAndFile(*clinic, id, content(), inputs, day, issues));
  }

  std::string due(base::Date day = kTarnsideDay) {
    std::string text;
    for (const auto& line : clinic->worklist(day, false)) text += (text.empty() ? "" : " ") + line.task.what;
    return text;
  }

  TemporaryFolder folder;
  std::string file = folder / "tarnside.stile";
  std::unique_ptr<application::Clinic> clinic;
  std::string id;
};

}  // namespace stile::test
