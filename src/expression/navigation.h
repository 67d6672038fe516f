// From an element of a resource to its members. For src/expression only.
#pragma once

#include <string_view>

#include "expression/item.h"

namespace stile::expression {

/// The members called `name` of an element, appended to `into`. A choice element is found under
/// its name without the type (`value` for `valueQuantity`), and only so where the model knows it.
void appendMember(const Item& item, std::string_view name, const TypeModel& model, Collection& into);

/// All members of an element, in the order of the document, appended to `into`.
void appendChildren(const Item& item, const TypeModel& model, Collection& into);

/// True when the model knows the item's type and that it has no such member.
bool isUnknownMember(const Item& item, std::string_view name);

}  // namespace stile::expression
