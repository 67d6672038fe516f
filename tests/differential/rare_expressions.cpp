// Expressions with the functions that are asked for less often.
#include "expression_maker.h"

namespace stile::differential {

std::string ExpressionMaker::rare(int depth) {
  const Wanted kind = anyKind();
  switch (random_.below(16)) {
    case 0:
      return std::to_string(random_.below(500)) + "." + std::to_string(random_.below(1000)) + "." +
             random_.oneOf({"lowBoundary()", "highBoundary()", "lowBoundary(2)", "highBoundary(1)"});
    case 1:
      return literal(random_.oneIn(2) ? Wanted::Date : Wanted::Time) + "." +
             random_.oneOf({"lowBoundary()", "highBoundary()"});
    case 2:
      return single(Wanted::DateTime, 0) + "." +
             random_.oneOf({"yearOf()", "monthOf()", "dayOf()", "hourOf()", "minuteOf()", "secondOf()",
                            "dateOf()", "timeOf()"});
    case 3:
      return single(Wanted::Text, depth) + "." +
             random_.oneOf({"escape('html')", "escape('json')", "unescape('html')",
                            "encode('base64').decode('base64')"});
    case 4:
      return single(Wanted::Quantity, 0) + ".comparable(" + single(Wanted::Quantity, 0) + ")";
    case 5:
      return single(Wanted::Quantity, 0) + "." + random_.oneOf({"toQuantity('g')", "toQuantity('cm')"});
    case 6:
      return "(" + single(kind, depth) + " as " +
             random_.oneOf(
                 {"System.Integer", "System.String", "Quantity", "date", "boolean", "string", "DateTime"}) +
             ")";
    case 7:
      return "coalesce(" + collection(kind, depth) + ", " + single(kind, depth) + ")";
    case 8:
      return "(" + collection(Wanted::Integer, depth) +
             ").aggregate(iif($total.empty(), $this, iif($this < $total, $this, $total)))";
    case 9:
      return "(" + collection(kind, depth) + ").aggregate($total.combine($this).skip($index), {})";
    case 10:
      return "(" + single(random_.oneIn(2) ? Wanted::Date : Wanted::DateTime, 0) +
             random_.oneOf({" + ", " - "}) +
             random_.oneOf(
                 {"2 'wk'", "40 'd'", "1.5 days", "3 'h'", "90 'min'", "1 'a'", "100 'ms'", "30.5 's'"}) +
             ")";
    case 11:
      return "descendants().where($this is " +
             random_.oneOf(
                 {"Quantity", "string", "code", "boolean", "integer", "Coding", "BackboneElement"}) +
             ").count()";
    case 12:
      return path() + ".select(children().count())";
    case 13:
      return "repeat(children()).count()";
    case 14:
      return single(Wanted::Text, depth) + ".matches(" +
             random_.oneOf({"'^[a-z]+$'", "'[0-9]{2,}'", "'(a|b)+c'", "'\\\\\\\\d'", "'A.a'", "''"}) + ")";
    default:
      return "(" + collection(random_.oneIn(2) ? Wanted::Text : Wanted::Integer, depth) +
             ").select($this.toString() & '/' & $index.toString())";
  }
}

}  // namespace stile::differential
