// A keeper's own fair, Saturday 11 December 2027, as lines to play: 60 skeps, 40 tapers and 12
// pillars out of 3.40, 2.15 and 1.20 kg of wax in three shades; and a year's wax before it.
#pragma once

namespace combwright::test {

inline constexpr const char* candleStockLines =
    R"({"do":"add-goods","on":"2027-10-01","name":"skep","what":"candle","net_g":45}
{"do":"add-goods","on":"2027-10-01","name":"taper","what":"candle","net_g":68}
{"do":"add-goods","on":"2027-10-01","name":"pillar","what":"candle","net_g":310}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47,"wick":"#1","wick_length_mm":120,"set_hours":2}
{"do":"add-mould","on":"2027-10-01","name":"Tapers","goods_kind":"taper","cavities":6,"volume_ml":71,"wick":"2/0","wick_length_mm":300,"set_hours":2}
{"do":"add-mould","on":"2027-10-01","name":"Pillars","goods_kind":"pillar","cavities":2,"shape":"cylinder","diameter_mm":76.2,"height_mm":69.9,"wick":"#5","wick_length_mm":200,"set_hours":12}
{"do":"buy-wick","on":"2027-11-01","wick":"#1","bought_length_mm":5000}
{"do":"buy-wick","on":"2027-11-01","wick":"2/0","bought_length_mm":15000}
{"do":"buy-wick","on":"2027-11-01","wick":"#5","bought_length_mm":3000}
)";

inline constexpr const char* candleBlockLines =
    R"({"do":"cast-block","on":"2027-11-01","name":"L","shade":"light","mass_g":3400}
{"do":"cast-block","on":"2027-11-01","name":"M","shade":"mid","mass_g":2150}
{"do":"cast-block","on":"2027-11-01","name":"D","shade":"dark","mass_g":1200}
)";

inline constexpr const char* candleWishLines =
    R"({"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-12-10","weekdays":"mon wed fri"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"skep","count":60,"wanted_by":"2027-12-11","what_for":"fair","wish_order":1,"shades":"light"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"taper","count":40,"wanted_by":"2027-12-11","what_for":"fair","wish_order":2,"shades":"mid, light"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"pillar","count":12,"wanted_by":"2027-12-11","what_for":"fair","wish_order":3,"shades":"dark"}
)";

/// Cappings and scrapings that became those blocks: 50.0 kg raw, 8.7 kg washed, 1.45 kg slumgum,
/// 0.50 kg missing, 6.75 kg in blocks.
inline constexpr const char* candleBatchLines =
    R"({"do":"gather-wax","on":"2027-08-08","name":"Hill","source":"cappings","raw_g":11000}
{"do":"gather-wax","on":"2027-08-09","name":"Creek","source":"cappings","raw_g":8000}
{"do":"gather-wax","on":"2027-08-10","name":"Mill Lane","source":"cappings","raw_g":29400}
{"do":"gather-wax","on":"2027-08-10","name":"bench","source":"scrapings","raw_g":1600}
{"do":"work-wax","on":"2027-08-11","batch":"Hill","work":"gone together","into_batch":"Mill Lane"}
{"do":"work-wax","on":"2027-08-11","batch":"Creek","work":"gone together","into_batch":"Mill Lane"}
{"do":"work-wax","on":"2027-08-11","batch":"bench","work":"gone together","into_batch":"Mill Lane"}
{"do":"work-wax","on":"2027-08-12","batch":"Mill Lane","work":"washed","came_out_g":8700}
{"do":"work-wax","on":"2027-08-12","batch":"Mill Lane","work":"melted"}
{"do":"work-wax","on":"2027-08-12","batch":"Mill Lane","work":"foot scraped","came_out_g":1450}
{"do":"cast-block","on":"2027-08-12","name":"L","batch":"Mill Lane","shade":"light","mass_g":3400}
{"do":"cast-block","on":"2027-08-12","name":"M","batch":"Mill Lane","shade":"mid","mass_g":2150}
{"do":"cast-block","on":"2027-08-12","name":"D","batch":"Mill Lane","shade":"dark","mass_g":1200}
)";

}  // namespace combwright::test
