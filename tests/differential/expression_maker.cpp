#include "expression_maker.h"

#include "resource_paths.h"

namespace stile::differential {
namespace {

std::string quoted(const std::string& text) {
  return "'" + text + "'";
}

}  // namespace

Wanted ExpressionMaker::anyKind() {
  return static_cast<Wanted>(random_.below(8));
}

std::string ExpressionMaker::path() {
  return random_.oneOf(anyPathsOf(kind_));
}

std::string ExpressionMaker::path(Wanted wanted) {
  const TypedPaths& paths = typedPathsOf(kind_);
  const auto found = paths.find(wanted);
  if (found == paths.end()) return literal(wanted);
  // Within a criterion the path starts at the resource again.
  const std::string path = random_.oneOf(found->second);
  if (items_.empty()) return path;
  // The name of a type stands at the very start only.
  return "%resource." + (path.starts_with("Patient.") ? path.substr(8) : path);
}

std::string ExpressionMaker::literal(Wanted wanted) {
  switch (wanted) {
    case Wanted::Boolean:
      return random_.oneIn(2) ? "true" : "false";
    case Wanted::Integer:
      return std::to_string(random_.oneIn(6) ? random_.below(100000) : random_.below(12));
    case Wanted::Decimal: {
      const std::string number = makeDecimal(random_);
      const bool isWhole = number.find('.') == std::string::npos;
      return (number[0] == '-' ? "(" : "") + number + (isWhole ? ".0" : "") + (number[0] == '-' ? ")" : "");
    }
    case Wanted::Text:
      return quoted(makeWord(random_));
    case Wanted::Date:
      return "@" + makeDate(random_);
    case Wanted::DateTime: {
      const std::string value = makeDateTime(random_);
      return "@" + value + (value.find('T') == std::string::npos ? "T" : "");
    }
    case Wanted::Time:
      return "@T" + makeTime(random_);
    case Wanted::Quantity: {
      std::string number = makeDecimal(random_);
      if (number[0] == '-') number.erase(0, 1);
      if (random_.oneIn(3))
        return number + " " +
               random_.oneOf(
                   {"days", "weeks", "months", "years", "hours", "minutes", "seconds", "day", "year"});
      return number + " " +
             quoted(random_.oneOf({"mg", "g", "kg", "cm", "m", "mm[Hg]", "1", "wk", "d", "h", "min", "s",
                                   "/min", "%", "mg/dL", "Cel"}));
    }
  }
  return "{}";
}

std::string ExpressionMaker::single(Wanted wanted, int depth) {
  if (random_.oneIn(60)) return "{}";
  if (random_.oneIn(40)) wanted = anyKind();
  if (depth <= 0) {
    const bool isThis = !items_.empty() && items_.back() == wanted && random_.oneIn(2);
    if (isThis) return "$this";
    if (!random_.oneIn(3)) return literal(wanted);
    return path(wanted) +
           (random_.oneIn(25) ? "" : random_.oneOf({".first()", ".last()", "[0]", ".skip(1).first()"}));
  }
  switch (wanted) {
    case Wanted::Boolean:
      return boolean(depth - 1);
    case Wanted::Integer:
      return integer(depth - 1);
    case Wanted::Decimal:
      return decimal(depth - 1);
    case Wanted::Text:
      return text(depth - 1);
    case Wanted::Date:
      return date(depth - 1);
    case Wanted::DateTime:
      return dateTime(depth - 1);
    case Wanted::Time:
      return time(depth - 1);
    case Wanted::Quantity:
      return quantity(depth - 1);
  }
  return "{}";
}

std::string ExpressionMaker::boolean(int depth) {
  const Wanted kind = anyKind();
  switch (random_.below(16)) {
    case 0:
      return "(" + single(Wanted::Boolean, depth) + " " + random_.oneOf({"and", "or", "xor", "implies"}) +
             " " + single(Wanted::Boolean, depth) + ")";
    case 1:
      return single(Wanted::Boolean, depth) + ".not()";
    case 2:
    case 3:
      return "(" + single(kind, depth) + " " + random_.oneOf({"=", "!=", "~", "!~"}) + " " +
             single(kind, depth) + ")";
    case 4:
    case 5:
      return "(" + single(kind, depth) + " " + random_.oneOf({"<", "<=", ">", ">="}) + " " +
             single(kind, depth) + ")";
    case 6:
      return "(" + collection(kind, depth) + ")." + random_.oneOf({"exists()", "empty()", "isDistinct()"});
    case 7:
      return "(" + collection(kind, depth) + ")." + random_.oneOf({"exists", "all"}) + "(" +
             criterion(kind, depth) + ")";
    case 8:
      return "(" + single(kind, depth) + " in (" + collection(kind, depth) + "))";
    case 9:
      return "((" + collection(kind, depth) + ") contains " + single(kind, depth) + ")";
    case 10:
      return "(" + collection(kind, depth) + ")." + random_.oneOf({"subsetOf", "supersetOf"}) + "(" +
             collection(kind, depth) + ")";
    case 11:
      return single(Wanted::Text, depth) + "." +
             random_.oneOf({"startsWith", "endsWith", "contains", "matches", "matchesFull"}) + "(" +
             quoted(random_.oneOf({"a", "A", "M", "b", "o", "12", ""})) + ")";
    case 12:
      return single(kind, depth) + "." +
             random_.oneOf({"convertsToInteger", "convertsToDecimal", "convertsToString", "convertsToBoolean",
                            "convertsToDate", "convertsToDateTime", "convertsToTime", "convertsToQuantity"}) +
             "()";
    case 13:
      return "(" + single(kind, depth) + " is " +
             random_.oneOf({"Integer", "String", "Decimal", "Boolean", "Date", "DateTime", "Time",
                            "System.Quantity", "string", "code", "Quantity", "FHIR.date"}) +
             ")";
    case 14:
      return "(" + collection(Wanted::Boolean, depth) + ")." +
             random_.oneOf({"allTrue()", "anyTrue()", "allFalse()", "anyFalse()"});
    default:
      return "((" + collection(kind, depth) + ") " + random_.oneOf({"=", "~", "!=", "!~"}) + " (" +
             collection(kind, depth) + "))";
  }
}

std::string ExpressionMaker::integer(int depth) {
  switch (random_.below(10)) {
    case 0:
    case 1:
      return "(" + single(Wanted::Integer, depth) + " " + random_.oneOf({"+", "-", "*", "div", "mod"}) + " " +
             single(Wanted::Integer, depth) + ")";
    case 2:
      return "(" + collection(anyKind(), depth) + ").count()";
    case 3:
      return single(Wanted::Text, depth) + ".length()";
    case 4:
      return single(Wanted::Text, depth) + "." + random_.oneOf({"indexOf", "lastIndexOf"}) + "(" +
             single(Wanted::Text, depth) + ")";
    case 5:
      return "(" + single(Wanted::Decimal, depth) + ")." +
             random_.oneOf({"floor()", "ceiling()", "truncate()"});
    case 6:
      return "(" + collection(Wanted::Integer, depth) + ")." + random_.oneOf({"sum()", "min()", "max()"});
    case 7:
      return "(" + collection(Wanted::Integer, depth) + ").aggregate($total + $this, 0)";
    case 8:
      return "(-" + single(Wanted::Integer, depth) + ")" + random_.oneOf({"", ".abs()"});
    default:
      return single(Wanted::Text, depth) + ".toInteger()";
  }
}

std::string ExpressionMaker::decimal(int depth) {
  switch (random_.below(9)) {
    case 0:
    case 1:
    case 2:
      return "(" + single(random_.oneIn(3) ? Wanted::Integer : Wanted::Decimal, depth) + " " +
             random_.oneOf({"+", "-", "*", "/", "mod"}) + " " + single(Wanted::Decimal, depth) + ")";
    case 3:
      return "(" + single(Wanted::Integer, depth) + " / " + single(Wanted::Integer, depth) + ")";
    case 4:
      return "(" + single(Wanted::Decimal, depth) + ").round(" + std::to_string(random_.below(4)) + ")";
    case 5:
      return "(" + single(Wanted::Decimal, depth) + ")." +
             random_.oneOf({"sqrt()", "abs()", "ln()", "log(10)", "power(2)"});
    case 6:
      return "(" + collection(Wanted::Decimal, depth) + ")." +
             random_.oneOf({"sum()", "avg()", "min()", "max()"});
    case 7:
      return "(" + single(Wanted::Integer, depth) + ").toDecimal()";
    default:
      return "((" + single(Wanted::Integer, depth) + " mod 5) / 2).exp()";
  }
}

std::string ExpressionMaker::text(int depth) {
  switch (random_.below(12)) {
    case 0:
      return "(" + single(Wanted::Text, depth) + " " + random_.oneOf({"&", "+"}) + " " +
             single(Wanted::Text, depth) + ")";
    case 1:
      return single(Wanted::Text, depth) + "." + random_.oneOf({"upper()", "lower()", "trim()"});
    case 2:
      return single(Wanted::Text, depth) + ".substring(" + single(Wanted::Integer, 0) +
             random_.oneOf({"", ", 2", ", 1"}) + ")";
    case 3:
      return single(Wanted::Text, depth) + ".replace(" + quoted(random_.oneOf({"a", "", "ab", "o"})) + ", " +
             single(Wanted::Text, 0) + ")";
    case 4:
      return single(Wanted::Text, depth) + ".replaceMatches(" +
             quoted(random_.oneOf({"[a-c]+", "(\\\\w)(\\\\w)", "o.", "x*y"})) + ", " +
             quoted(random_.oneOf({"-", "$2$1", ""})) + ")";
    case 5:
      return "(" + collection(Wanted::Text, depth) + ").join(" + quoted(random_.oneOf({",", "", "--"})) + ")";
    case 6:
      return "(" + single(anyKind(), depth) + ").toString()";
    case 7:
      return single(Wanted::Text, depth) + ".split(',').last()";
    case 8:
      return single(Wanted::Text, depth) + ".encode(" +
             quoted(random_.oneOf({"hex", "base64", "urlbase64"})) + ")";
    case 9:
      return "iif(" + single(Wanted::Boolean, depth) + ", " + single(Wanted::Text, depth) + ", " +
             single(Wanted::Text, depth) + ")";
    case 10:
      return single(Wanted::Text, depth) + ".toChars().skip(1).first()";
    default:
      return "(" + single(random_.oneIn(2) ? Wanted::Integer : Wanted::DateTime, depth) + ").type().name";
  }
}

std::string ExpressionMaker::date(int depth) {
  switch (random_.below(4)) {
    case 0:
    case 1:
      return "(" + single(Wanted::Date, depth) + " " + random_.oneOf({"+", "-"}) + " " +
             std::to_string(random_.below(40)) + " " +
             random_.oneOf({"days", "weeks", "months", "years", "hours"}) + ")";
    case 2:
      return single(Wanted::DateTime, depth) + ".toDate()";
    default:
      return single(Wanted::Text, depth) + ".toDate()";
  }
}

std::string ExpressionMaker::dateTime(int depth) {
  switch (random_.below(3)) {
    case 0:
    case 1:
      return "(" + single(Wanted::DateTime, depth) + " " + random_.oneOf({"+", "-"}) + " " +
             std::to_string(random_.below(90)) + " " +
             random_.oneOf(
                 {"days", "weeks", "months", "years", "hours", "minutes", "seconds", "milliseconds"}) +
             ")";
    default:
      return single(Wanted::Date, depth) + ".toDateTime()";
  }
}

std::string ExpressionMaker::time(int depth) {
  if (random_.oneIn(2)) return single(Wanted::Text, depth) + ".toTime()";
  return "(" + single(Wanted::Time, depth) + " " + random_.oneOf({"+", "-"}) + " " +
         std::to_string(random_.below(90)) + " " + random_.oneOf({"hours", "minutes", "seconds"}) + ")";
}

std::string ExpressionMaker::quantity(int depth) {
  switch (random_.below(6)) {
    case 0:
      return "(" + single(Wanted::Quantity, depth) + " " + random_.oneOf({"+", "-"}) + " " +
             single(Wanted::Quantity, depth) + ")";
    case 1:
      return "(" + single(Wanted::Quantity, depth) + " " + random_.oneOf({"*", "/"}) + " " +
             single(Wanted::Decimal, depth) + ")";
    case 2:
      return "(" + single(Wanted::Quantity, depth) + ").abs()";
    case 3:
      return single(Wanted::Text, depth) + ".toQuantity()";
    case 4:
      return "(" + single(Wanted::Decimal, depth) + ").toQuantity()";
    default:
      return single(Wanted::Quantity, 0);
  }
}

std::string ExpressionMaker::criterion(Wanted wanted, int depth) {
  items_.push_back(wanted);
  const std::string result = single(Wanted::Boolean, depth);
  items_.pop_back();
  return random_.oneIn(6) ? "$index < " + std::to_string(random_.below(4)) : result;
}

std::string ExpressionMaker::projection(Wanted wanted, int depth) {
  items_.push_back(wanted);
  const std::string result = single(anyKind(), depth);
  items_.pop_back();
  return random_.oneIn(5) ? "$this" : result;
}

std::string ExpressionMaker::collection(Wanted wanted, int depth) {
  if (depth <= 0) {
    if (random_.oneIn(3)) return literal(wanted) + " | " + literal(wanted) + " | " + literal(wanted);
    return path(wanted);
  }
  --depth;
  switch (random_.below(11)) {
    case 0:
      return "(" + collection(wanted, depth) + ").where(" + criterion(wanted, depth) + ")";
    case 1:
      return "(" + collection(wanted, depth) + ").select(" + projection(wanted, depth) + ")";
    case 2:
      return "((" + collection(wanted, depth) + ") | (" + collection(wanted, depth) + "))";
    case 3:
      return "(" + collection(wanted, depth) + ")." +
             random_.oneOf({"union", "combine", "intersect", "exclude"}) + "(" + collection(wanted, depth) +
             ")";
    case 4:
      return "(" + collection(wanted, depth) + ")." +
             random_.oneOf(
                 {"skip(1)", "take(2)", "tail()", "distinct()", "first()", "last()", "skip(0)", "take(0)"});
    case 5:
      return "(" + single(Wanted::Text, depth) + ")." +
             random_.oneOf({"split(',')", "toChars()", "split('b')"});
    case 6:
      return "(" + collection(wanted, depth) + ").ofType(" +
             random_.oneOf({"string", "String", "Integer", "integer", "Quantity", "date", "boolean"}) + ")";
    case 7:
      return "iif(" + single(Wanted::Boolean, depth) + ", " + collection(wanted, depth) + ", " +
             collection(wanted, depth) + ")";
    case 8:
      return "(" + collection(wanted, depth) + ").sort()";
    case 9:
      return "(" + collection(wanted, depth) + ").defineVariable('v').select(%v.count())";
    default:
      return path(wanted);
  }
}

std::string ExpressionMaker::make(int depth) {
  items_.clear();
  switch (random_.below(7)) {
    case 2:
      return rare(depth - 1);
    case 0:
      return collection(anyKind(), depth);
    case 1:
      return path() + random_.oneOf({"", ".count()", ".distinct().count()", ".first()", ".exists()",
                                     ".select(type().name)", ".children().count()", ".skip(1)",
                                     ".all($this is Element)", " = " + path(), " ~ " + path(),
                                     ".where($index > 0)", ".isDistinct()"});
    default:
      return single(anyKind(), depth);
  }
}

}  // namespace stile::differential
