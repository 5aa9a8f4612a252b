#include "oracle/mip.hpp"

#include <glpk.h>

#include <cmath>
#include <memory>

#include <fmt/format.h>

namespace manciple::oracle {

std::size_t Mip::add(std::string name, double cost, double upper, bool integer) {
  columns.push_back({std::move(name), cost, 0, upper, integer});
  return columns.size() - 1;
}

namespace {

std::string sum_of(const Mip& mip, const Mip::Terms& terms) {
  std::string text;
  int on_line = 0;
  for (const auto& [column, factor] : terms) {
    text += fmt::format(" {} {:.12g} {}", factor < 0 ? '-' : '+', std::abs(factor),
                        mip.columns[column].name);
    if (++on_line % 8 == 0)
      text += "\n ";
  }
  return text;
}

} // namespace

std::string to_lp_file(const Mip& mip) {
  std::string text = "Minimize\n total:";
  Mip::Terms costs;
  for (std::size_t i = 0; i < mip.columns.size(); ++i)
    if (mip.columns[i].cost != 0)
      costs.emplace_back(i, mip.columns[i].cost);
  text += sum_of(mip, costs) + "\nSubject To\n";
  for (std::size_t i = 0; i < mip.rows.size(); ++i) {
    const Mip::Row& row = mip.rows[i];
    if (row.terms.empty())
      continue;
    const std::string sum = sum_of(mip, row.terms);
    if (row.lower == row.upper)
      text += fmt::format(" r{}:{} = {:.12g}\n", i, sum, row.upper);
    else
      text += fmt::format(" r{}:{} <= {:.12g}\n", i, sum, row.upper);
  }
  text += "Bounds\n";
  for (const Mip::Column& column : mip.columns)
    if (column.upper < infinite)
      text += fmt::format(" 0 <= {} <= {:.12g}\n", column.name, column.upper);
  text += "Generals\n";
  for (const Mip::Column& column : mip.columns)
    if (column.integer)
      text += fmt::format(" {}\n", column.name);
  return text + "End\n";
}

MipResult solve_with_glpk(const Mip& mip, int seconds) {
  const std::unique_ptr<glp_prob, void (*)(glp_prob*)> problem(glp_create_prob(), glp_delete_prob);
  glp_set_obj_dir(problem.get(), GLP_MIN);
  glp_add_cols(problem.get(), static_cast<int>(mip.columns.size()));
  for (std::size_t i = 0; i < mip.columns.size(); ++i) {
    const Mip::Column& column = mip.columns[i];
    const int at = static_cast<int>(i) + 1;
    glp_set_obj_coef(problem.get(), at, column.cost);
    if (column.upper == 0)
      glp_set_col_bnds(problem.get(), at, GLP_FX, 0, 0);
    else
      glp_set_col_bnds(problem.get(), at, column.upper < infinite ? GLP_DB : GLP_LO, 0,
                       column.upper);
    if (column.integer)
      glp_set_col_kind(problem.get(), at, GLP_IV);
  }
  if (!mip.rows.empty())
    glp_add_rows(problem.get(), static_cast<int>(mip.rows.size()));
  for (std::size_t i = 0; i < mip.rows.size(); ++i) {
    const Mip::Row& row = mip.rows[i];
    const int at = static_cast<int>(i) + 1;
    std::vector<int> columns{0};
    std::vector<double> factors{0};
    for (const auto& [column, factor] : row.terms) {
      columns.push_back(static_cast<int>(column) + 1);
      factors.push_back(factor);
    }
    glp_set_mat_row(problem.get(), at, static_cast<int>(row.terms.size()), columns.data(),
                    factors.data());
    glp_set_row_bnds(problem.get(), at, row.lower == row.upper ? GLP_FX : GLP_UP, row.lower,
                     row.upper);
  }
  glp_smcp simplex;
  glp_init_smcp(&simplex);
  simplex.msg_lev = GLP_MSG_OFF;
  MipResult result;
  if (glp_simplex(problem.get(), &simplex) != 0)
    return result;
  if (glp_get_status(problem.get()) == GLP_NOFEAS) {
    result.state = MipResult::State::infeasible;
    return result;
  }
  glp_iocp options;
  glp_init_iocp(&options);
  options.msg_lev = GLP_MSG_OFF;
  options.tm_lim = seconds * 1000;
  options.tol_int = 1e-7;
  options.tol_obj = 1e-9;
  const int ended = glp_intopt(problem.get(), &options);
  if (ended == GLP_ETMLIM) {
    result.state = MipResult::State::stopped;
    if (glp_mip_status(problem.get()) == GLP_FEAS)
      result.objective = glp_mip_obj_val(problem.get());
    return result;
  }
  if (ended != 0)
    return result;
  if (glp_mip_status(problem.get()) == GLP_OPT) {
    result.state = MipResult::State::optimal;
    result.objective = glp_mip_obj_val(problem.get());
  } else if (glp_mip_status(problem.get()) == GLP_NOFEAS) {
    result.state = MipResult::State::infeasible;
  }
  return result;
}

} // namespace manciple::oracle
