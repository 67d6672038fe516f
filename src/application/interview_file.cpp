#include "application/interview_file.h"

#include <filesystem>

#include "answers/response_writer.h"
#include "application/content_folder.h"
#include "application/save_file.h"
#include "json/document.h"

namespace stile::application {

base::Result<std::optional<answers::Response>> readDraft(const screening::Content& content, const std::string& path,
                                                         base::Issues& issues) {
  std::error_code trouble;
  if (!std::filesystem::exists(path, trouble)) return std::optional<answers::Response>();
  auto text = readFile(path);
  if (!text) return text.failure();
  const base::Failure refused{base::FailureKind::Refused, path + ": this is no response to a form of this program; choose another file"};
  const auto document = json::Document::parse(std::move(text).value(), path, issues);
  if (!document) return refused;
  auto response = answers::loadResponse(document->root(), content.forms, issues);
  if (!response) return refused;
  return std::optional(std::move(*response));
}

std::optional<base::Failure> saveDraft(const std::string& path, const answers::Response& response, bool isComplete) {
  return saveFile(path, answers::writeResponse(response, isComplete ? answers::Status::Completed : answers::Status::InProgress));
}

}  // namespace stile::application
