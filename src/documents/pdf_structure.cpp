#include "documents/pdf_structure.h"

#include <set>
#include <string_view>

// qpdf 11 asks which of its two pointer types is meant: the standard one.
#define POINTERHOLDER_TRANSITION 4
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFWriter.hh>

#include "documents/pdf_contents.h"

namespace stile::documents {
namespace {

using Handle = QPDFObjectHandle;

bool isElement(Handle object) {
  return object.isDictionary() && object.hasKey("/S");
}

class StructureMender {
 public:
  StructureMender(QPDF& pdf, const TagNotes& notes)
      : pdf_(pdf),
        notes_(notes),
        artifacts_(notes.artifacts.begin(), notes.artifacts.end()),
        contents_(notes.shapes) {}

  void mend(const std::string& language) {
    Handle root = pdf_.getRoot();
    root.replaceKey("/Lang", Handle::newUnicodeString(language));
    root.replaceKey("/ViewerPreferences", Handle::parse("<< /DisplayDocTitle true >>"));
    if (!root.hasKey("/StructTreeRoot")) return;
    Handle tree = root.getKey("/StructTreeRoot");
    children(tree);
    forgetMarks(tree);
    for (Handle page : pdf_.getAllPages()) {
      Handle contents = page.getKey("/Contents");
      if (contents.isStream()) mendContents(contents);
      // Whole pages that cairo put into a group of their own.
      Handle objects = page.getKey("/Resources").getKey("/XObject");
      if (!objects.isDictionary()) continue;
      for (const std::string& key : objects.getKeys()) {
        Handle object = objects.getKey(key);
        if (object.isStream() && object.getDict().getKey("/Subtype").isName() &&
            object.getDict().getKey("/Subtype").getName() == "/Form")
          mendContents(object);
      }
    }
  }

  int seen() const { return next_; }
  bool isAllPlaced() const { return contents_.isAllPlaced(); }

 private:
  /// Depth first, which is the order in which the tags were opened.
  void children(Handle& element) {
    Handle kids = element.getKey("/K");
    if (kids.isArray()) {
      Handle kept = Handle::newArray();
      for (int i = 0; i < kids.getArrayNItems(); ++i) {
        Handle kid = kids.getArrayItem(i);
        if (!isElement(kid) || visit(kid)) kept.appendItem(kid);
      }
      element.replaceKey("/K", kept);
    } else if (isElement(kids)) {
      if (!visit(kids)) element.removeKey("/K");
    }
  }

  /// False when the element is an ornament and goes.
  bool visit(Handle element) {
    const int number = next_++;
    if (artifacts_.contains(number)) {
      // Whatever is inside counts, and goes with it.
      children(element);
      gone_.insert(element.getObjGen());
      return false;
    }
    if (const auto words = notes_.alternatives.find(number); words != notes_.alternatives.end())
      element.replaceKey("/Alt", Handle::newUnicodeString(words->second));
    if (const auto scope = notes_.scopes.find(number); scope != notes_.scopes.end())
      element.replaceKey("/A", Handle::parse("<< /O /Table /Scope /" + scope->second + " >>"));
    children(element);
    return true;
  }

  /// Marks on the pages no longer lead to elements that are gone.
  void forgetMarks(Handle& tree) {
    Handle numbers = tree.getKey("/ParentTree").getKey("/Nums");
    if (!numbers.isArray()) return;
    for (int i = 1; i < numbers.getArrayNItems(); i += 2) {
      Handle marks = numbers.getArrayItem(i);
      if (!marks.isArray()) continue;
      for (int k = 0; k < marks.getArrayNItems(); ++k)
        if (gone_.contains(marks.getArrayItem(k).getObjGen())) marks.setArrayItem(k, Handle::newNull());
    }
  }

  void mendContents(Handle& stream) {
    const auto buffer = stream.getStreamData(qpdf_dl_generalized);
    const std::string_view contents(reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize());
    stream.replaceStreamData(deflated(contents_.mended(contents)), Handle::newName("/FlateDecode"),
                             Handle::newNull());
  }

  QPDF& pdf_;
  const TagNotes& notes_;
  std::set<int> artifacts_;
  ContentsMender contents_;
  std::set<QPDFObjGen> gone_;
  int next_ = 0;
};

}  // namespace

base::Result<std::string> withStructure(const std::string& bytes, const std::string& language,
                                        const TagNotes& notes) {
  try {
    QPDF pdf;
    pdf.setSuppressWarnings(true);
    pdf.processMemoryFile("paper", bytes.data(), bytes.size());
    StructureMender mender(pdf, notes);
    mender.mend(language);
    if (mender.seen() != notes.count)
      return base::Failure{base::FailureKind::File, "the PDF could not be made (its tags are not in order: " +
                                                        std::to_string(mender.seen()) + " of " +
                                                        std::to_string(notes.count) + ")"};
    if (!mender.isAllPlaced())
      return base::Failure{base::FailureKind::File,
                           "the PDF could not be made (a drawing has not found its place)"};
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setDeterministicID(true);
    writer.setObjectStreamMode(qpdf_o_generate);
    writer.setCompressStreams(true);
    writer.write();
    const auto buffer = writer.getBufferSharedPointer();
    return std::string(reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize());
  } catch (const std::exception& trouble) {
    return base::Failure{base::FailureKind::File,
                         std::string("the PDF could not be made (") + trouble.what() + ")"};
  }
}

}  // namespace stile::documents
