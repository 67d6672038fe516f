#include "records/client.h"

#include "base/utf8.h"
#include "json/reader.h"
#include "records/drawn_build.h"

namespace stile::records {
namespace {

/// The letters U+00C0 to U+017F without their marks; '-' stands for signs that are kept out.
constexpr std::string_view kPlain =
    "aaaaaaaceeeeiiiidnooooo-ouuuuytsaaaaaaaceeeeiiiidnooooo-ouuuuyty"
    "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiiiiijjkkkllllllllllnnnnnnnnnoooooooorrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";

void readPerson(json::ObjectReader& parent, const char* key, Person& person, base::Issues& issues) {
  const auto node = parent.find(key);
  if (!node) return;
  json::ObjectReader reader(*node, std::string("client ") + key, issues);
  person.name = reader.requireString("name");
  person.place = reader.string("place");
  person.telephone = reader.string("telephone");
  reader.finish();
}

void writePerson(json::Writer& writer, const char* key, const Person& person) {
  if (person.name.empty()) return;
  writer.key(key).beginObject().member("name", person.name);
  if (!person.place.empty()) writer.member("place", person.place);
  if (!person.telephone.empty()) writer.member("telephone", person.telephone);
  writer.endObject();
}

}  // namespace

Client loadClient(const std::string& text, const std::string& file, base::Issues& issues) {
  Client client;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return client;
  json::ObjectReader reader(document->root(), "client", issues);
  client.given = reader.requireString("given");
  client.family = reader.requireString("family");
  const std::string born = reader.requireString("born");
  client.born = base::Date::parse(born);
  if (!client.born && !born.empty()) reader.issue(*reader.find("born"), "\"" + born + "\" is no day", "write the date of birth as YYYY-MM-DD");
  client.record = reader.string("record");
  client.telephone = reader.string("telephone");
  client.email = reader.string("email");
  client.address = reader.string("address");
  readPerson(reader, "emergencyContact", client.emergencyContact, issues);
  readPerson(reader, "physician", client.physician, issues);
  client.drawnBuild = readBuild(reader, "drawnBuild");
  reader.finish();
  return client;
}

std::string toJson(const Client& client) {
  json::Writer writer(0);
  writer.beginObject().member("given", client.given).member("family", client.family);
  if (client.born) writer.member("born", client.born->toText());
  const std::pair<const char*, const std::string*> texts[] = {
      {"record", &client.record}, {"telephone", &client.telephone}, {"email", &client.email}, {"address", &client.address}};
  for (const auto& [key, value] : texts)
    if (!value->empty()) writer.member(key, *value);
  writePerson(writer, "emergencyContact", client.emergencyContact);
  writePerson(writer, "physician", client.physician);
  if (client.drawnBuild) writer.member("drawnBuild", movement::idOf(*client.drawnBuild));
  writer.endObject();
  return writer.text();
}

std::string searchable(std::string_view text) {
  std::string plain;
  for (const std::string_view sign : base::codePoints(text)) {
    const auto first = static_cast<unsigned char>(sign[0]);
    if (sign.size() == 1) {
      const bool isSpace = first <= ' ';
      if (isSpace && (plain.empty() || plain.back() == ' ')) continue;
      plain += isSpace ? ' ' : first >= 'A' && first <= 'Z' ? static_cast<char>(first + 32) : sign[0];
    } else if (sign.size() == 2 && first >= 0xC3 && first <= 0xC5) {
      const std::size_t code = ((first & 0x1Fu) << 6) | (static_cast<unsigned char>(sign[1]) & 0x3Fu);
      plain += kPlain[code - 0xC0];
    } else {
      plain += sign;
    }
  }
  while (!plain.empty() && plain.back() == ' ') plain.pop_back();
  return plain;
}

}  // namespace stile::records
