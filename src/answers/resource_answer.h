// Answers that are files or point to other resources. For src/answers only.
#pragma once

#include "base/issue.h"
#include "json/document.h"
#include "questionnaire/item.h"

namespace stile::answers {

/// An Attachment: members, base64, media type and size. False when it is no proper one.
bool checkAttachment(json::Node value, const questionnaire::Item& question, base::Issues& issues);

/// A Reference: members, the resource type it names, and whether the question takes that type.
bool checkReference(json::Node value, const questionnaire::Item& question, base::Issues& issues);

}  // namespace stile::answers
