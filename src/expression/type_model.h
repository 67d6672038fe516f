// The types of a data model, as the evaluator needs them: which elements a type has, of which type
// they are, which ones are choices (`value[x]`), and which type another one specialises.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stile::expression {

struct ModelType;

/// An element of a type. Always true: `types` is not empty; a choice has the JSON name
/// `name` + type with a capital letter.
struct ModelElement {
  std::string name;
  bool isChoice = false;
  std::vector<const ModelType*> types;
};

/// A type. `name` is what type().name gives (`Patient`, `string`, `BackboneElement`); `path` is
/// unique (`Patient.contact`).
struct ModelType {
  std::string name;
  std::string capitalised;  ///< as it stands behind the name of a choice: `String`
  std::string path;
  const ModelType* base = nullptr;
  std::vector<ModelElement> elements;  ///< its own, without those of `base`
  bool isPrimitive = false;
  bool isResource = false;
  bool isSystem = false;  ///< of FHIRPath's own types: `System.String`

  /// Itself or something it specialises.
  bool isKindOf(const ModelType& other) const;
  /// The element of this type or of what it specialises; null when there is none.
  const ModelElement* element(std::string_view elementName) const;
};

/// A closed set of types.
///
/// Read from lines `Type:Base element:Type|Type* group{element:Type …}`; see r4_types.txt.
class TypeModel {
 public:
  /// nullptr when the text names a type it does not define.
  static std::shared_ptr<const TypeModel> parse(std::string_view text);

  /// By name or path; null when there is none.
  const ModelType* find(std::string_view path) const;
  /// The namespace of the types: `FHIR`.
  const std::string& space() const { return space_; }

  TypeModel(const TypeModel&) = delete;
  TypeModel& operator=(const TypeModel&) = delete;

 private:
  TypeModel() = default;
  class Reader;
  std::string space_;
  std::map<std::string, std::unique_ptr<ModelType>, std::less<>> types_;
};

/// FHIR R4 (4.0.1): all data types and resources, from the definitions of the standard (CC0).
const TypeModel& r4Model();

}  // namespace stile::expression
