// Makes papers in a thread of its own, so that the window goes on while they are set.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <thread>

#include "application/client_papers.h"

namespace stile::desktop {

class PaperJob {
 public:
  /// Both are called in the job's own thread, and never once it was called off.
  struct Told {
    std::function<void(std::size_t done, std::size_t of, const std::string& name)>
        progress;  ///< may be empty
    std::function<void(base::Result<application::MadePapers>)> done;
  };
  PaperJob(application::PaperOrder order, std::shared_ptr<const screening::Content> content,
           std::string contentFolder, Told told);

  /// No paper is begun any more, and nothing is told.
  void callOff() { thread_.request_stop(); }

 private:
  std::jthread thread_;  ///< calls it off before the next paper and waits for the one that is being set
};

}  // namespace stile::desktop
