// The choice against a general-purpose integer solver: the same wishes, one after the other, each
// fixed at its best before the next is solved.
#ifdef STILE_HAS_GLPK
#include <glpk.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <random>

#include "plan/choice.h"

using namespace stile::plan;

namespace {

class Model {
 public:
  explicit Model(const ChoiceProblem& problem) : problem_(problem), solver_(glp_create_prob()) { build(); }
  ~Model() { glp_delete_prob(solver_); }
  Model(const Model&) = delete;
  Model& operator=(const Model&) = delete;

  Worth best() {
    Worth worth{};
    for (std::size_t wish = 0; wish < wishes_.size(); ++wish) worth[wish] = maximise(wishes_[wish]);
    return worth;
  }

 private:
  using Terms = std::map<int, double>;  // column -> coefficient

  int binary() {
    const int column = glp_add_cols(solver_, 1);
    glp_set_col_kind(solver_, column, GLP_BV);
    return column;
  }

  void bound(const Terms& terms, int kind, double low, double high) {
    const int row = glp_add_rows(solver_, 1);
    std::vector<int> columns{0};
    std::vector<double> values{0};
    for (const auto& [column, value] : terms) columns.push_back(column), values.push_back(value);
    glp_set_mat_row(solver_, row, static_cast<int>(terms.size()), columns.data(), values.data());
    glp_set_row_bnds(solver_, row, kind, low, high);
  }
  void atMost(const Terms& terms, double high) { bound(terms, GLP_UP, 0, high); }

  int maximise(const Terms& wish) {
    if (wish.empty()) return 0;
    glp_set_obj_dir(solver_, GLP_MAX);
    for (int column = 1; column <= glp_get_num_cols(solver_); ++column) glp_set_obj_coef(solver_, column, 0);
    for (const auto& [column, value] : wish) glp_set_obj_coef(solver_, column, value);
    glp_iocp options;
    glp_init_iocp(&options);
    options.msg_lev = GLP_MSG_OFF;
    options.presolve = GLP_ON;
    REQUIRE(glp_intopt(solver_, &options) == 0);
    REQUIRE(glp_mip_status(solver_) == GLP_OPT);
    const int value = static_cast<int>(std::lround(glp_mip_obj_val(solver_)));
    bound(wish, GLP_LO, value, 0);
    return value;
  }

  void build() {
    glp_term_out(GLP_OFF);
    wishes_.resize(8);
    std::vector<std::vector<int>> taken(problem_.slots.size());
    std::map<int, Terms> linesOf;
    Terms budget;
    int positions = 0;
    for (const Slot& slot : problem_.slots)
      for (const Option& option : slot.options) positions = std::max(positions, option.position + 1);
    std::map<int, int> pieces;  // bit -> column
    for (std::size_t s = 0; s < problem_.slots.size(); ++s) {
      const Slot& slot = problem_.slots[s];
      Terms once;
      for (const Option& option : slot.options) {
        const int x = binary();
        taken[s].push_back(x);
        once[x] = linesOf[slot.section][x] = 1;
        wishes_[0][x] = slot.weight;
        wishes_[1][x] = option.preference;
        wishes_[2][x] = option.wish;
        wishes_[3][x] = -option.unsuited;
        wishes_[4][x] = option.isAdapted ? -1 : 0;
        wishes_[7][x] = -option.minutes;
        budget[x] = option.budgetMinutes;
        for (int bit = 0; bit < kMostPieces; ++bit) {
          if ((option.equipment >> bit & 1u) == 0) continue;
          if (pieces.count(bit) == 0) wishes_[6][pieces[bit] = binary()] = -1;
          atMost({{x, 1}, {pieces[bit], -1}}, 0);
        }
      }
      if (!once.empty()) atMost(once, 1);
      if (slot.copy > 0) later(taken[s - 1], taken[s]);
    }
    for (const auto& [section, terms] : linesOf)
      atMost(terms, problem_.linesAtMost[static_cast<std::size_t>(section)]);
    if (problem_.minutesAtMost && !budget.empty()) atMost(budget, *problem_.minutesAtMost);
    changes(taken, positions);
  }

  /// A second exercise of a purpose needs a first one, and comes after it in the list.
  void later(const std::vector<int>& before, const std::vector<int>& after) {
    for (std::size_t o = 0; o < after.size(); ++o) {
      Terms terms{{after[o], 1}};
      for (std::size_t earlier = 0; earlier < o; ++earlier) terms[before[earlier]] -= 1;
      atMost(terms, 0);
    }
  }

  /// After each slot the client is in exactly one position; a line fixes it, a skipped slot need not
  /// change it; what differs from the slot before counts.
  void changes(const std::vector<std::vector<int>>& taken, int positions) {
    std::vector<int> before;
    for (std::size_t s = 0; s < taken.size() && positions > 0; ++s) {
      std::vector<int> now;
      Terms one;
      for (int p = 0; p < positions; ++p) now.push_back(binary()), one[now.back()] = 1;
      bound(one, GLP_FX, 1, 1);
      for (std::size_t o = 0; o < taken[s].size(); ++o)
        atMost({{taken[s][o], 1}, {now[static_cast<std::size_t>(problem_.slots[s].options[o].position)], -1}},
               0);
      if (!before.empty()) {
        const int changed = binary();
        wishes_[5][changed] = -1;
        for (std::size_t p = 0; p < now.size(); ++p) atMost({{now[p], 1}, {before[p], -1}, {changed, -1}}, 0);
      }
      before = now;
    }
  }

  const ChoiceProblem& problem_;
  glp_prob* solver_;
  std::vector<Terms> wishes_;
};

ChoiceProblem generated(std::mt19937& random) {
  const auto pick = [&random](int from, int to) {
    return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
  };
  ChoiceProblem problem;
  const int sections = pick(2, 4);
  for (int section = 0; section < sections; ++section) {
    problem.linesAtMost.push_back(pick(1, 3));
    for (int purpose = pick(1, 4); purpose > 0; --purpose) {
      Slot slot;
      slot.weight = pick(1, 5) * 10;
      slot.section = section;
      for (int count = pick(0, 5); count > 0; --count) {
        Option option;
        option.preference = pick(-1, 1), option.wish = pick(-1, 1), option.unsuited = pick(0, 2), option.isAdapted = pick(0, 2) == 0;
        option.position = pick(0, 3),
        option.equipment = static_cast<std::uint32_t>(pick(0, 63) & pick(0, 63));
        option.minutes = pick(1, 6), option.budgetMinutes = pick(0, 3) == 0 ? 0 : option.minutes;
        slot.options.push_back(option);
      }
      const int copies = pick(0, 3) == 0 ? 2 : 1;
      for (slot.copy = 0; slot.copy < copies; ++slot.copy) problem.slots.push_back(slot);
    }
  }
  if (pick(0, 1) == 0) problem.minutesAtMost = pick(4, 20);
  return problem;
}

}  // namespace

TEST_CASE("The choice is worth as much as a general-purpose solver's optimum on 500 generated problems") {
  std::mt19937 random(5);
  for (int round = 0; round < 500; ++round) {
    const ChoiceProblem problem = generated(random);
    const auto ours = worthOf(problem, choose(problem));
    INFO("round " << round);
    REQUIRE(ours.has_value());
    REQUIRE(*ours == Model(problem).best());
  }
}
#endif
