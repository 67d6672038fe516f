// Things on a page whose height follows from their width, and the column that gives it to them.
#pragma once

#include <wx/panel.h>
#include <wx/scrolwin.h>

#include <vector>

#include "desktop/theme.h"

class wxBoxSizer;

namespace stile::desktop {

/// A control that lays itself out for a width, in pixels of the window.
class Fitted {
 public:
  virtual ~Fitted() = default;
  virtual void fit(int width) = 0;
};

/// Gives every direct child of `parent` that is Fitted this width.
void fitChildren(wxWindow& parent, int width);

/// A panel whose children are fitted to its width, one below the other.
class Stack : public wxPanel, public Fitted {
 public:
  explicit Stack(wxWindow* parent);
  /// Puts a child below those before, `above` pixels apart.
  void put(wxWindow* child, int above = 0);
  /// Takes everything out.
  void clear();
  void fit(int width) override;
};

/// Controls of one kind that stay when there are fewer to show: the next showing needs new words only. Making
/// native controls anew takes most of the time of a page.
template <class Control>
class Kept {
 public:
  /// The control of this number, shown; `make` makes those that are not there yet, in order.
  template <class Make>
  Control& at(std::size_t number, Make make) {
    while (all_.size() <= number) all_.push_back(make(all_.size()));
    all_[number]->Show();
    return *all_[number];
  }
  /// Makes one more beforehand, hidden.
  template <class Make>
  void prepare(Make make) {
    all_.push_back(make(all_.size()));
    all_.back()->Hide();
  }
  /// Hides all but the first `count`.
  void keep(std::size_t count) {
    for (std::size_t i = count; i < all_.size(); ++i) all_[i]->Hide();
  }
  const std::vector<Control*>& all() const { return all_; }

 private:
  std::vector<Control*> all_;
};

/// Scrolls the column around `child` so far that it is in view.
void reveal(const wxWindow& child);

/// The width inside a window that scrolls, the same whether or not the bar is shown: a bar that comes and goes
/// would lay everything out a second time. In pixels.
int widthBesideBar(const wxWindow& scrolled);

/// A page's column: scrolls up and down, fits its children to its width. Add children to `stack()`.
class Column : public wxScrolledWindow {
 public:
  /// `widest`: text grows no further than this; 0 = as wide as there is room.
  Column(wxWindow* parent, const Theme& theme, drawing::Colour ground, int margin = 22, int widest = 0);
  wxBoxSizer& stack() { return *stack_; }
  /// Puts a child below those before, `above` pixels apart.
  void put(wxWindow* child, int above = 0);
  void space(int pixels);
  /// Takes everything out.
  void clear();
  /// Whether the lower edge of what stands in it is in view.
  bool showsEndOf(const wxWindow& child) const;
  /// Lays out anew after children changed.
  void refit();
  /// Scrolls, where not all has room, until `child` stands at the top; it may stand in a stack of the column.
  void showFrom(const wxWindow& child);
  /// Page up, page down, home and end, for a column nobody has the focus in. True when it was one of them.
  bool scrollBy(int key);

 private:
  void fitNow();
  wxBoxSizer* stack_;
  int margin_, widest_;
  int fitted_ = 0;  ///< the width last given to the children
};

}  // namespace stile::desktop
