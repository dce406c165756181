<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en_GB" sourcelanguage="en">
<context>
    <name>account</name>
    <message numerus="yes">
        <source>not weighed</source>
        <translation>
            <numerusform>not weighed</numerusform>
            <numerusform>not weighed</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>raw</source>
        <translation>
            <numerusform>raw</numerusform>
            <numerusform>raw</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n of them not weighed</source>
        <translation>
            <numerusform>%n of them not weighed</numerusform>
            <numerusform>%n of them not weighed</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>lost in the melt</source>
        <translation>
            <numerusform>lost in the melt</numerusform>
            <numerusform>lost in the melt</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 % of it came out clean</source>
        <translation>
            <numerusform>%1 % of it came out clean</numerusform>
            <numerusform>%1 % of it came out clean</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>honey, water and dirt, of batches weighed in and out</source>
        <translation>
            <numerusform>honey, water and dirt, of batches weighed in and out</numerusform>
            <numerusform>honey, water and dirt, of batches weighed in and out</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>clean blocks</source>
        <translation>
            <numerusform>clean blocks</numerusform>
            <numerusform>clean blocks</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>bought or of before</source>
        <translation>
            <numerusform>bought or of before</numerusform>
            <numerusform>bought or of before</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>poured into candles</source>
        <translation>
            <numerusform>poured into candles</numerusform>
            <numerusform>poured into candles</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>sold as blocks</source>
        <translation>
            <numerusform>sold as blocks</numerusform>
            <numerusform>sold as blocks</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>given away</source>
        <translation>
            <numerusform>given away</numerusform>
            <numerusform>given away</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>traded for foundation</source>
        <translation>
            <numerusform>traded for foundation</numerusform>
            <numerusform>traded for foundation</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>melted again</source>
        <translation>
            <numerusform>melted again</numerusform>
            <numerusform>melted again</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>lost</source>
        <translation>
            <numerusform>lost</numerusform>
            <numerusform>lost</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>block %1</source>
        <translation>
            <numerusform>block %1</numerusform>
            <numerusform>block %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n given</source>
        <translation>
            <numerusform>%n given</numerusform>
            <numerusform>%n given</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n kept</source>
        <translation>
            <numerusform>%n kept</numerusform>
            <numerusform>%n kept</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n broken</source>
        <translation>
            <numerusform>%n broken</numerusform>
            <numerusform>%n broken</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n came back</source>
        <translation>
            <numerusform>%n came back</numerusform>
            <numerusform>%n came back</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n sold without a price</source>
        <translation>
            <numerusform>%n sold without a price</numerusform>
            <numerusform>%n sold without a price</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 each</source>
        <translation>
            <numerusform>%1 each</numerusform>
            <numerusform>%1 each</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>honey in bulk</source>
        <translation>
            <numerusform>honey in bulk</numerusform>
            <numerusform>honey in bulk</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 given</source>
        <translation>
            <numerusform>%1 given</numerusform>
            <numerusform>%1 given</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 kept</source>
        <translation>
            <numerusform>%1 kept</numerusform>
            <numerusform>%1 kept</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 spilled</source>
        <translation>
            <numerusform>%1 spilled</numerusform>
            <numerusform>%1 spilled</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>takings %1</source>
        <translation>
            <numerusform>takings %1</numerusform>
            <numerusform>takings %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>melted</source>
        <translation>
            <numerusform>melted</numerusform>
            <numerusform>melted</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>burnt</source>
        <translation>
            <numerusform>burnt</numerusform>
            <numerusform>burnt</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>sold</source>
        <translation>
            <numerusform>sold</numerusform>
            <numerusform>sold</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>found missing</source>
        <translation>
            <numerusform>found missing</numerusform>
            <numerusform>found missing</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>boxes gone</source>
        <translation>
            <numerusform>boxes gone</numerusform>
            <numerusform>boxes gone</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in the shed on %1</source>
        <translation>
            <numerusform>in the shed on %1</numerusform>
            <numerusform>in the shed on %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n in repair</source>
        <translation>
            <numerusform>%n in repair</numerusform>
            <numerusform>%n in repair</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n lent</source>
        <translation>
            <numerusform>%n lent</numerusform>
            <numerusform>%n lent</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Wax</source>
        <translation>
            <numerusform>Wax</numerusform>
            <numerusform>Wax</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No wax is written down for this year.</source>
        <translation>
            <numerusform>No wax is written down for this year.</numerusform>
            <numerusform>No wax is written down for this year.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in blocks on %1</source>
        <translation>
            <numerusform>in blocks on %1</numerusform>
            <numerusform>in blocks on %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>what was there and came less what went</source>
        <translation>
            <numerusform>what was there and came less what went</numerusform>
            <numerusform>what was there and came less what went</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>More went out than there was: a block is not written down.</source>
        <translation>
            <numerusform>More went out than there was: a block is not written down.</numerusform>
            <numerusform>More went out than there was: a block is not written down.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>of the honey</source>
        <translation>
            <numerusform>of the honey</numerusform>
            <numerusform>of the honey</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>clean blocks of the year to its honey</source>
        <translation>
            <numerusform>clean blocks of the year to its honey</numerusform>
            <numerusform>clean blocks of the year to its honey</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Candles poured</source>
        <translation>
            <numerusform>Candles poured</numerusform>
            <numerusform>Candles poured</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n seconds</source>
        <translation>
            <numerusform>%n second</numerusform>
            <numerusform>%n seconds</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n failed, back to the pot</source>
        <translation>
            <numerusform>%n failed, back to the pot</numerusform>
            <numerusform>%n failed, back to the pot</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No candle was poured.</source>
        <translation>
            <numerusform>No candle was poured.</numerusform>
            <numerusform>No candle was poured.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>all</source>
        <translation>
            <numerusform>all</numerusform>
            <numerusform>all</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Out of the door</source>
        <translation>
            <numerusform>Out of the door</numerusform>
            <numerusform>Out of the door</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Nothing went out by what is written down.</source>
        <translation>
            <numerusform>Nothing went out by what is written down.</numerusform>
            <numerusform>Nothing went out by what is written down.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>takings</source>
        <translation>
            <numerusform>takings</numerusform>
            <numerusform>takings</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n sold and no price written down: not in it</source>
        <translation>
            <numerusform>%n sold and no price written down: not in it</numerusform>
            <numerusform>%n sold and no price written down: not in it</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Comb, boxes and equipment</source>
        <translation>
            <numerusform>Comb, boxes and equipment</numerusform>
            <numerusform>Comb, boxes and equipment</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No comb or box went, and no stock was taken.</source>
        <translation>
            <numerusform>No comb or box went, and no stock was taken.</numerusform>
            <numerusform>No comb or box went, and no stock was taken.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 %</source>
        <translation>
            <numerusform>%1 %</numerusform>
            <numerusform>%1 %</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>from %1</source>
        <translation>
            <numerusform>from %1</numerusform>
            <numerusform>from %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>why is not known</source>
        <translation>
            <numerusform>why is not known</numerusform>
            <numerusform>why is not known</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>with %1</source>
        <translation>
            <numerusform>with %1</numerusform>
            <numerusform>with %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 and %n more</source>
        <translation>
            <numerusform>%1 and %n more</numerusform>
            <numerusform>%1 and %n more</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>made by splits</source>
        <translation>
            <numerusform>made by splits</numerusform>
            <numerusform>made by splits</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>swarms hived</source>
        <translation>
            <numerusform>swarms hived</numerusform>
            <numerusform>swarms hived</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>packages</source>
        <translation>
            <numerusform>packages</numerusform>
            <numerusform>packages</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>nuclei</source>
        <translation>
            <numerusform>nuclei</numerusform>
            <numerusform>nuclei</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>overwintered, written down since</source>
        <translation>
            <numerusform>overwintered, written down since</numerusform>
            <numerusform>overwintered, written down since</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>came, from where is not known</source>
        <translation>
            <numerusform>came, from where is not known</numerusform>
            <numerusform>came, from where is not known</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>lost, why is not known</source>
        <translation>
            <numerusform>lost, why is not known</numerusform>
            <numerusform>lost, why is not known</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>united</source>
        <translation>
            <numerusform>united</numerusform>
            <numerusform>united</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>lost: winter loss</source>
        <translation>
            <numerusform>lost: winter loss</numerusform>
            <numerusform>lost: winter loss</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>lost: queenless</source>
        <translation>
            <numerusform>lost: queenless</numerusform>
            <numerusform>lost: queenless</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>lost: absconded</source>
        <translation>
            <numerusform>lost: absconded</numerusform>
            <numerusform>lost: absconded</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>lost: destroyed for disease</source>
        <translation>
            <numerusform>lost: destroyed for disease</numerusform>
            <numerusform>lost: destroyed for disease</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>lost: other</source>
        <translation>
            <numerusform>lost: other</numerusform>
            <numerusform>lost: other</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>found dead, its end is not written down</source>
        <translation>
            <numerusform>found dead, its end is not written down</numerusform>
            <numerusform>found dead, its end is not written down</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The winter since %1</source>
        <translation>
            <numerusform>The winter since %1</numerusform>
            <numerusform>The winter since %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The winter from %1 to %2</source>
        <translation>
            <numerusform>The winter from %1 to %2</numerusform>
            <numerusform>The winter from %1 to %2</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>up to %1</source>
        <translation>
            <numerusform>up to %1</numerusform>
            <numerusform>up to %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>no colony was written down at its start, so no loss can be told</source>
        <translation>
            <numerusform>no colony was written down at its start, so no loss can be told</numerusform>
            <numerusform>no colony was written down at its start, so no loss can be told</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 of %2</source>
        <translation>
            <numerusform>%1 of %2</numerusform>
            <numerusform>%1 of %2</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>of all colonies together</source>
        <translation>
            <numerusform>of all colonies together</numerusform>
            <numerusform>of all colonies together</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>mean of the yards</source>
        <translation>
            <numerusform>mean of the yards</numerusform>
            <numerusform>mean of the yards</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>sold or united meanwhile, counted neither way</source>
        <translation>
            <numerusform>sold or united meanwhile, counted neither way</numerusform>
            <numerusform>sold or united meanwhile, counted neither way</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Colonies through the year</source>
        <translation>
            <numerusform>Colonies through the year</numerusform>
            <numerusform>Colonies through the year</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The account begins on 1 May.</source>
        <translation>
            <numerusform>The account begins on 1 May.</numerusform>
            <numerusform>The account begins on 1 May.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No colony is written down for this year.</source>
        <translation>
            <numerusform>No colony is written down for this year.</numerusform>
            <numerusform>No colony is written down for this year.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>on 1 May</source>
        <translation>
            <numerusform>on 1 May</numerusform>
            <numerusform>on 1 May</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>into winter</source>
        <translation>
            <numerusform>into winter</numerusform>
            <numerusform>into winter</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>on %1</source>
        <translation>
            <numerusform>on %1</numerusform>
            <numerusform>on %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Winter begins on %1 here; what ends after it is the winter&apos;s.</source>
        <translation>
            <numerusform>Winter begins on %1 here; what ends after it is the winter&apos;s.</numerusform>
            <numerusform>Winter begins on %1 here; what ends after it is the winter&apos;s.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Winter losses</source>
        <translation>
            <numerusform>Winter losses</numerusform>
            <numerusform>Winter losses</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No winter before or after %1 is written down yet.</source>
        <translation>
            <numerusform>No winter before or after %1 is written down yet.</numerusform>
            <numerusform>No winter before or after %1 is written down yet.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>run %1</source>
        <translation>
            <numerusform>run %1</numerusform>
            <numerusform>run %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>the whole year</source>
        <translation>
            <numerusform>the whole year</numerusform>
            <numerusform>the whole year</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>from paper: %1</source>
        <translation>
            <numerusform>from paper: %1</numerusform>
            <numerusform>from paper: %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in %n runs</source>
        <translation>
            <numerusform>in %n run</numerusform>
            <numerusform>in %n runs</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in %n runs; paper says %1 beside it</source>
        <translation>
            <numerusform>in %n run; paper says %1 beside it</numerusform>
            <numerusform>in %n runs; paper says %1 beside it</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>noted from paper, %n notes</source>
        <translation>
            <numerusform>noted from paper, %n note</numerusform>
            <numerusform>noted from paper, %n notes</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Honey year by year</source>
        <translation>
            <numerusform>Honey year by year</numerusform>
            <numerusform>Honey year by year</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No run and no crop is written down yet.</source>
        <translation>
            <numerusform>No run and no crop is written down yet.</numerusform>
            <numerusform>No run and no crop is written down yet.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>What paper says is shown beside what the runs brought and never added to it: which of it counts the book of that year tells, hive by hive.</source>
        <translation>
            <numerusform>What paper says is shown beside what the runs brought and never added to it: which of it counts the book of that year tells, hive by hive.</numerusform>
            <numerusform>What paper says is shown beside what the runs brought and never added to it: which of it counts the book of that year tells, hive by hive.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Colonies year by year</source>
        <translation>
            <numerusform>Colonies year by year</numerusform>
            <numerusform>Colonies year by year</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No colony is written down yet.</source>
        <translation>
            <numerusform>No colony is written down yet.</numerusform>
            <numerusform>No colony is written down yet.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>the winter before took %1 of %2: %3 % of all, %4 % as the mean of the yards</source>
        <translation>
            <numerusform>the winter before took %1 of %2: %3 % of all, %4 % as the mean of the yards</numerusform>
            <numerusform>the winter before took %1 of %2: %3 % of all, %4 % as the mean of the yards</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>lost in the winter before</source>
        <translation>
            <numerusform>lost in the winter before</numerusform>
            <numerusform>lost in the winter before</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n came</source>
        <translation>
            <numerusform>%n came</numerusform>
            <numerusform>%n came</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n lost</source>
        <translation>
            <numerusform>%n lost</numerusform>
            <numerusform>%n lost</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 to %2 by chance alone</source>
        <translation>
            <numerusform>%1 to %2 by chance alone</numerusform>
            <numerusform>%1 to %2 by chance alone</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>At risk is what lived when the winter began and was neither sold nor united. Of all together: dead ÷ at risk, which large yards decide, with the 95 % interval of so few colonies; those of one yard fare alike, so the truth is wider still. The mean of the yards counts each yard&apos;s own share alike. A survey&apos;s average loss is the mean over many keepers, so only the first of the two goes beside its total.</source>
        <translation>
            <numerusform>At risk is what lived when the winter began and was neither sold nor united. Of all together: dead ÷ at risk, which large yards decide, with the 95 % interval of so few colonies; those of one yard fare alike, so the truth is wider still. The mean of the yards counts each yard&apos;s own share alike. A survey&apos;s average loss is the mean over many keepers, so only the first of the two goes beside its total.</numerusform>
            <numerusform>At risk is what lived when the winter began and was neither sold nor united. Of all together: dead ÷ at risk, which large yards decide, with the 95 % interval of so few colonies; those of one yard fare alike, so the truth is wider still. The mean of the yards counts each yard&apos;s own share alike. A survey&apos;s average loss is the mean over many keepers, so only the first of the two goes beside its total.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>a super on a hive</source>
        <translation>
            <numerusform>a super on a hive</numerusform>
            <numerusform>a super on a hive</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>on an empty hive</source>
        <translation>
            <numerusform>on an empty hive</numerusform>
            <numerusform>on an empty hive</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in the freezer</source>
        <translation>
            <numerusform>in the freezer</numerusform>
            <numerusform>in the freezer</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in the storeroom</source>
        <translation>
            <numerusform>in the storeroom</numerusform>
            <numerusform>in the storeroom</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>no mark</source>
        <translation>
            <numerusform>no mark</numerusform>
            <numerusform>no mark</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>loose on a shelf</source>
        <translation>
            <numerusform>loose on a shelf</numerusform>
            <numerusform>loose on a shelf</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 in the shed</source>
        <translation>
            <numerusform>%1 in the shed</numerusform>
            <numerusform>%1 in the shed</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>on hives</source>
        <translation>
            <numerusform>on hives</numerusform>
            <numerusform>on hives</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>counted from the hives that live</source>
        <translation>
            <numerusform>counted from the hives that live</numerusform>
            <numerusform>counted from the hives that live</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>needed %1, there %2</source>
        <translation>
            <numerusform>needed %1, there %2</numerusform>
            <numerusform>needed %1, there %2</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 short until that is done</source>
        <translation>
            <numerusform>%1 short until that is done</numerusform>
            <numerusform>%1 short until that is done</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>not all of it was counted</source>
        <translation>
            <numerusform>not all of it was counted</numerusform>
            <numerusform>not all of it was counted</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Short for spring %1</source>
        <translation>
            <numerusform>Short for spring %1</numerusform>
            <numerusform>Short for spring %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Only what is short for spring %1 can be told, from the stock as it stands: it is with the year %2.</source>
        <translation>
            <numerusform>Only what is short for spring %1 can be told, from the stock as it stands: it is with the year %2.</numerusform>
            <numerusform>Only what is short for spring %1 can be told, from the stock as it stands: it is with the year %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No plan for %1 is kept yet. Say in the storeroom (Ctrl+6) how many colonies, splits and supers: what is short follows.</source>
        <translation>
            <numerusform>No plan for %1 is kept yet. Say in the storeroom (Ctrl+6) how many colonies, splits and supers: what is short follows.</numerusform>
            <numerusform>No plan for %1 is kept yet. Say in the storeroom (Ctrl+6) how many colonies, splits and supers: what is short follows.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 boxes</source>
        <translation>
            <numerusform>%1 boxes</numerusform>
            <numerusform>%1 boxes</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>foundation, %1</source>
        <translation>
            <numerusform>foundation, %1</numerusform>
            <numerusform>foundation, %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 sheets to put in, %2 there</source>
        <translation>
            <numerusform>%1 sheets to put in, %2 there</numerusform>
            <numerusform>%1 sheets to put in, %2 there</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n sheets to put in, what is there nobody counted</source>
        <translation>
            <numerusform>%n sheet to put in, what is there nobody counted</numerusform>
            <numerusform>%n sheets to put in, what is there nobody counted</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Nothing is short for spring %1, as the plan and the stock stand today.</source>
        <translation>
            <numerusform>Nothing is short for spring %1, as the plan and the stock stand today.</numerusform>
            <numerusform>Nothing is short for spring %1, as the plan and the stock stand today.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>After repairs, as the plan for %1 and the stock stand today; the storeroom (Ctrl+6) prints the order list.</source>
        <translation>
            <numerusform>After repairs, as the plan for %1 and the stock stand today; the storeroom (Ctrl+6) prints the order list.</numerusform>
            <numerusform>After repairs, as the plan for %1 and the stock stand today; the storeroom (Ctrl+6) prints the order list.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>combwright::Rail</name>
    <message numerus="yes">
        <source>%n colonies</source>
        <translation>
            <numerusform>%n colony</numerusform>
            <numerusform>%n colonies</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>combwright::RailItem</name>
    <message numerus="yes">
        <source>%n waiting</source>
        <translation>
            <numerusform>%n waiting</numerusform>
            <numerusform>%n waiting</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>harvest</name>
    <message numerus="yes">
        <source>In %1, %2 of %n colonies gave %3 of honey, %4 more than the year before.</source>
        <translation>
            <numerusform>In %1, %2 of %n colony gave %3 of honey, %4 more than the year before.</numerusform>
            <numerusform>In %1, %2 of %n colonies gave %3 of honey, %4 more than the year before.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>In %1, %2 of %n colonies gave %3 of honey, %4 more than in %5.</source>
        <translation>
            <numerusform>In %1, %2 of %n colony gave %3 of honey, %4 more than in %5.</numerusform>
            <numerusform>In %1, %2 of %n colonies gave %3 of honey, %4 more than in %5.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>In %1, %2 of %n colonies gave %3 of honey, %4 less than the year before.</source>
        <translation>
            <numerusform>In %1, %2 of %n colony gave %3 of honey, %4 less than the year before.</numerusform>
            <numerusform>In %1, %2 of %n colonies gave %3 of honey, %4 less than the year before.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>In %1, %2 of %n colonies gave %3 of honey, %4 less than in %5.</source>
        <translation>
            <numerusform>In %1, %2 of %n colony gave %3 of honey, %4 less than in %5.</numerusform>
            <numerusform>In %1, %2 of %n colonies gave %3 of honey, %4 less than in %5.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>In %1, %2 of %n colonies gave %3 of honey, as much as the year before.</source>
        <translation>
            <numerusform>In %1, %2 of %n colony gave %3 of honey, as much as the year before.</numerusform>
            <numerusform>In %1, %2 of %n colonies gave %3 of honey, as much as the year before.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>In %1, %2 of %n colonies gave %3 of honey, as much as in %4.</source>
        <translation>
            <numerusform>In %1, %2 of %n colony gave %3 of honey, as much as in %4.</numerusform>
            <numerusform>In %1, %2 of %n colonies gave %3 of honey, as much as in %4.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>In %1, %2 of %n colonies gave %3 of honey.</source>
        <translation>
            <numerusform>In %1, %2 of %n colony gave %3 of honey.</numerusform>
            <numerusform>In %1, %2 of %n colonies gave %3 of honey.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>It is %1 more than in %2.</source>
        <translation>
            <numerusform>It is %1 more than in %2.</numerusform>
            <numerusform>It is %1 more than in %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>It is %1 less than in %2.</source>
        <translation>
            <numerusform>It is %1 less than in %2.</numerusform>
            <numerusform>It is %1 less than in %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>It is as much as in %1.</source>
        <translation>
            <numerusform>It is as much as in %1.</numerusform>
            <numerusform>It is as much as in %1.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>That is %1 per producing hive (%2) and %3 per hive standing on 1 May (%4).</source>
        <translation>
            <numerusform>That is %1 per producing hive (%2) and %3 per hive standing on 1 May (%4).</numerusform>
            <numerusform>That is %1 per producing hive (%2) and %3 per hive standing on 1 May (%4).</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>That is %1 per producing hive (%2).</source>
        <translation>
            <numerusform>That is %1 per producing hive (%2).</numerusform>
            <numerusform>That is %1 per producing hive (%2).</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>That is %1 per hive standing on 1 May (%2).</source>
        <translation>
            <numerusform>That is %1 per hive standing on 1 May (%2).</numerusform>
            <numerusform>That is %1 per hive standing on 1 May (%2).</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>How many hives gave it is not known: a part is only noted as a total.</source>
        <translation>
            <numerusform>How many hives gave it is not known: a part is only noted as a total.</numerusform>
            <numerusform>How many hives gave it is not known: a part is only noted as a total.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No honey was written down in %1.</source>
        <translation>
            <numerusform>No honey was written down in %1.</numerusform>
            <numerusform>No honey was written down in %1.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>In %1 there was %2 of honey, of no hive by name.</source>
        <translation>
            <numerusform>In %1 there was %2 of honey, of no hive by name.</numerusform>
            <numerusform>In %1 there was %2 of honey, of no hive by name.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>In %1 there was %2 of honey; of %n hives it is known how much.</source>
        <translation>
            <numerusform>In %1 there was %2 of honey; of %n hive it is known how much.</numerusform>
            <numerusform>In %1 there was %2 of honey; of %n hives it is known how much.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>It came in one run on %1.</source>
        <translation>
            <numerusform>It came in one run on %1.</numerusform>
            <numerusform>It came in one run on %1.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>It came in %n runs from %1 to %2.</source>
        <translation>
            <numerusform>It came in %n run from %1 to %2.</numerusform>
            <numerusform>It came in %n runs from %1 to %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>It is all noted from paper.</source>
        <translation>
            <numerusform>It is all noted from paper.</numerusform>
            <numerusform>It is all noted from paper.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 of it is noted from paper.</source>
        <translation>
            <numerusform>%1 of it is noted from paper.</numerusform>
            <numerusform>%1 of it is noted from paper.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 of it has no hive yet.</source>
        <translation>
            <numerusform>%1 of it has no hive yet.</numerusform>
            <numerusform>%1 of it has no hive yet.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No colony was lost between 1 May and winter.</source>
        <translation>
            <numerusform>No colony was lost between 1 May and winter.</numerusform>
            <numerusform>No colony was lost between 1 May and winter.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>No colony was lost since 1 May.</source>
        <translation>
            <numerusform>No colony was lost since 1 May.</numerusform>
            <numerusform>No colony was lost since 1 May.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>One colony was lost between 1 May and winter.</source>
        <translation>
            <numerusform>One colony was lost between 1 May and winter.</numerusform>
            <numerusform>One colony was lost between 1 May and winter.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>One colony was lost since 1 May.</source>
        <translation>
            <numerusform>One colony was lost since 1 May.</numerusform>
            <numerusform>One colony was lost since 1 May.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n colonies were lost between 1 May and winter.</source>
        <translation>
            <numerusform>%n colony was lost between 1 May and winter.</numerusform>
            <numerusform>%n colonies were lost between 1 May and winter.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n colonies were lost since 1 May.</source>
        <translation>
            <numerusform>%n colony was lost since 1 May.</numerusform>
            <numerusform>%n colonies were lost since 1 May.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The winter before took none of %n.</source>
        <translation>
            <numerusform>The winter before took none of %n.</numerusform>
            <numerusform>The winter before took none of %n.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The winter before took %1 of %n.</source>
        <translation>
            <numerusform>The winter before took %1 of %n.</numerusform>
            <numerusform>The winter before took %1 of %n.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 (%n times)</source>
        <translation>
            <numerusform>%1 (%n time)</numerusform>
            <numerusform>%1 (%n times)</numerusform>
        </translation>
    </message>
</context>
</TS>
