#include "desktop/paper_job.h"

namespace stile::desktop {

PaperJob::PaperJob(application::PaperOrder order, std::shared_ptr<const screening::Content> content,
                   std::string contentFolder, Told told)
    : thread_([order = std::move(order), content = std::move(content), folder = std::move(contentFolder),
               told = std::move(told)](std::stop_token stop) mutable {
        order.options.progress = [&told, &stop](std::size_t done, std::size_t of, const std::string& name) {
          if (!stop.stop_requested() && told.progress) told.progress(done, of, name);
          return !stop.stop_requested();
        };
        base::Issues issues;
        auto made = application::makePapers(order, *content, folder, issues);
        if (!stop.stop_requested()) told.done(std::move(made));
      }) {}

}  // namespace stile::desktop
