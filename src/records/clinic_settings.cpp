#include "records/clinic_settings.h"

#include "json/reader.h"

namespace stile::records {

ClinicSettings ClinicSettings::load(const std::string& text, const std::string& file, base::Issues& issues) {
  ClinicSettings settings;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return settings;
  json::ObjectReader reader(document->root(), "settings", issues);
  settings.name = reader.requireString("name");
  settings.address = reader.string("address");
  settings.telephone = reader.string("telephone");
  settings.openingHours = reader.string("openingHours");
  settings.outOfHours = reader.string("outOfHours");
  settings.emergencyNumber = reader.requireString("emergencyNumber");
  settings.clinician = reader.string("clinician");
  reader.finish();
  return settings;
}

}  // namespace stile::records
