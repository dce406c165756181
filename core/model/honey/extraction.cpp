#include "core/model/honey/extraction.h"

#include "core/model/storeroom/equipment.h"

namespace combwright {

const Fields& Extraction::fields() {
    static const Fields all = describe(
        ownId<&Extraction::id>(), field<&Extraction::name>("name"),
        field<&Extraction::on>("on_day"), field<&Extraction::yard>("yard"),
        field<&Extraction::begun>("begun"), field<&Extraction::ended>("ended"),
        field<&Extraction::room>("room"), field<&Extraction::damp>("damp"),
        known<&Extraction::cappings>("cappings"), known<&Extraction::scrapings>("scrapings"),
        field<&Extraction::closed>("closed"), field<&Extraction::note>("note"));
    return all;
}

const Fields& ExtractionBox::fields() {
    static const Fields all = describe(
        ownId<&ExtractionBox::id>(), field<&ExtractionBox::extraction>("extraction"),
        field<&ExtractionBox::box>("box"), field<&ExtractionBox::hive>("hive"),
        field<&ExtractionBox::knownAs>("known_as"), field<&ExtractionBox::frameKind>("frame_kind"),
        field<&ExtractionBox::frames>("frames"), known<&ExtractionBox::filled>("filled"),
        known<&ExtractionBox::gross>("gross"), known<&ExtractionBox::wet>("wet"));
    return all;
}

const Fields& SpinLoad::fields() {
    static const Fields all =
        describe(ownId<&SpinLoad::id>(), field<&SpinLoad::extraction>("extraction"),
                 field<&SpinLoad::number>("number"), field<&SpinLoad::on>("on_day"),
                 field<&SpinLoad::minutes>("spun"), field<&SpinLoad::ran>("ran"),
                 field<&SpinLoad::rpm>("rpm"), field<&SpinLoad::startOffset>("start_offset"),
                 field<&SpinLoad::endOffset>("end_offset"), field<&SpinLoad::doubt>("doubt"),
                 field<&SpinLoad::machine>("machine"), field<&SpinLoad::begun>("begun"),
                 field<&SpinLoad::uncapping>("uncapping"));
    return all;
}

const Fields& LoadBox::fields() {
    static const Fields all =
        describe(ownId<&LoadBox::id>(), field<&LoadBox::load>("load"), field<&LoadBox::box>("box"),
                 field<&LoadBox::frames>("frames"));
    return all;
}

const Fields& HoneyTraits::fields() {
    static const Fields all =
        describe(field<&HoneyTraits::strainer>("strainer"), field<&HoneyTraits::colour>("colour"),
                 field<&HoneyTraits::pfund>("pfund"), field<&HoneyTraits::place>("place"),
                 field<&HoneyTraits::taste>("taste"));
    return all;
}

const Fields& Bucket::fields() {
    static const Fields all = describe(
        ownId<&Bucket::id>(), field<&Bucket::extraction>("extraction"),
        field<&Bucket::mark>("mark"), known<&Bucket::net>("net"), field<&Bucket::water>("water"),
        field<&Bucket::lidded>("lidded"), field<&Bucket::note>("note"), part<&Bucket::traits>(),
        field<&Bucket::kind>("kind"));
    return all;
}

const Fields& ClosingShare::fields() {
    static const Fields all =
        describe(ownId<&ClosingShare::id>(), field<&ClosingShare::extraction>("extraction"),
                 field<&ClosingShare::hive>("hive"), field<&ClosingShare::mass>("mass"),
                 field<&ClosingShare::how>("how"));
    return all;
}

}  // namespace combwright
