// One piece of work at a time on a thread of its own, so that the window stays live.
#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>
#include <utility>

namespace gangway::app {

template <class Result>
class Background {
public:
    /// `stop` says when the result is no longer wanted; work that takes long looks at it now and then.
    using Work = std::function<Result(const std::stop_token& stop)>;

    /// Begins; only while nothing is going on. `ended` is called on the other thread when the result is
    /// there.
    void start(Work work, std::function<void()> ended) {
        done_ = std::make_shared<Done>();
        thread_ = std::jthread(
            [done = done_, work = std::move(work), ended = std::move(ended)](const std::stop_token& stop) {
                Result result = work(stop);
                {
                    const std::lock_guard lock(done->mutex);
                    done->result = std::move(result);
                }
                if (ended) ended();
            });
    }
    /// From start() until its result was taken.
    bool busy() const { return done_ != nullptr; }
    /// The result, once; nullopt while there is none.
    std::optional<Result> take() {
        if (!done_) return std::nullopt;
        std::optional<Result> result;
        {
            const std::lock_guard lock(done_->mutex);
            result = std::exchange(done_->result, std::nullopt);
        }
        if (!result) return std::nullopt;
        thread_.join();
        done_.reset();
        return result;
    }
    /// Asks the work to end early; its result still comes.
    void askToStop() { thread_.request_stop(); }
    /// Asks it to end and waits; the result is dropped.
    void end() {
        thread_.request_stop();
        if (thread_.joinable()) thread_.join();
        done_.reset();
    }

private:
    struct Done {
        std::mutex mutex;
        std::optional<Result> result;
    };
    std::shared_ptr<Done> done_;
    std::jthread thread_; // last: joined before what it writes to goes
};

} // namespace gangway::app
