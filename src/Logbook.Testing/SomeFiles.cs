namespace Logbook.Testing;

/// <summary>The files of a small invented site: two people, a slaker, a titration, a look-and-listen point.</summary>
internal static class SomeFiles
{
    public const string Site = """
        [site]
        id = "line-t"
        name = "Two Willows test line"
        time_zone = "America/New_York"
        altitude_m = 12

        [[shift]]
        code = "D"
        starts = "07:00"

        [[shift]]
        code = "N"
        starts = "19:00"

        [crews]
        names = ["A", "B", "C", "D"]
        pattern = "DDNNoooo"
        anchor = 2026-01-01
        offset_days = 2

        [[person]]
        code = "op1"
        name = "Operator one"
        role = "operator"
        crew = "A"

        [[person]]
        code = "eng1"
        name = "Engineer one"
        role = "engineer"

        [[round]]
        id = "hourly"
        title = "Line round"
        every = "1h"
        points = ["SL-T1", "SL-F1", "LM-F1", "LM-CAO"]

        [[equipment]]
        code = "slaker"
        name = "Slaker"
        area = "slaker"

        [[equipment]]
        code = "lime-screw"
        name = "Lime screw"
        area = "lime"

        [reasons]
        not_taken = ["no time", "forgot", "equipment down", "instrument faulty", "other"]
        relief = ["injured or ill", "other"]
        not_yet = ["critical step running", "other"]

        [[calculation]]
        use = "end-points"
        name = "white liquor"
        inputs.a = "WL-A"
        inputs.b = "WL-B"
        inputs.c = "WL-C"
        outputs.causticity = "WL-CE"

        [[calculation]]
        use = "dose"
        name = "lime"
        inputs.lime = "LM-F1"
        inputs.cao = "LM-CAO"
        inputs.flow = "SL-F1"
        outputs.dose = "SL-CAO"

        [[calculation]]
        use = "margin"
        name = "boiling"
        inputs.temperature = "SL-T1"
        inputs.boiling = { value = "104.0 degC", u = "0.4", source = "usual liquor of this line" }
        outputs.margin = "SL-MARGIN"
        """;

    public const string Points = """
        tag,description,area,unit,kind,decimals,resolution,u,lowest,highest,urgent_low,watch_low,watch_high,urgent_high,step,stale,equipment,sample,estimates,choices,always
        SL-T1,Slaker temperature,slaker,degC,read,1,0.1,0.3,0,115,,,,,6,,slaker,,,,yes
        SL-F1,Green liquor flow to the slaker,slaker,m3/h,read,0,1,1%,0,600,200,240,340,,100,,slaker,,,,
        SL-I,Slaker agitator current,slaker,A,read,0,1,1,0,400,60,80,120,140,30,,slaker,,,,
        SL-HATCH,Slaker hatches,slaker,choice,read,,,,,,,,,,,6h,slaker,,,shut;ajar!watch;open!urgent,yes
        SL-MARGIN,Margin of the slaker to boiling,slaker,K,derived,1,,,,,1,2,,,,,slaker,,,,yes
        SL-CAO,CaO dose from the weigher,slaker,kg/m3,derived,1,,,,,,45,62,68,,,slaker,,,,
        LM-F1,Lime feed by the weigher,lime,t/h,read,2,0.01,1.5%,0,50,,,22,25,6,,lime-screw,,,,
        LM-CAO,Available CaO of the lime,lime,%,read,1,0.1,0.6,30,100,,85,92,,5,30h,,,,,
        WL-A,"White liquor, end point A",laboratory,mL,read,2,0.05,0.03,0,60,,,,,,6h,,white-liquor,,,
        WL-B,"White liquor, end point B",laboratory,mL,read,2,0.05,0.03,0,60,,,,,,6h,,white-liquor,,,
        WL-C,"White liquor, end point C",laboratory,mL,read,2,0.05,0.03,0,60,,,,,,6h,,white-liquor,,,
        WL-CE,Causticity of white liquor,laboratory,%,derived,1,,,,,70,78,84,90,,,,,,,
        WL-TTA,"White liquor, total titratable alkali",laboratory,g/L Na2O,read,1,0.1,0.5,0,250,,110,135,,,6h,,,,,
        """;

    public const string Cautions = """
        [[caution]]
        hazard = "Caustic and hot liquor"
        trigger = "always"
        text = "Hot alkali burns and blinds."
        ppe = "Goggles, face shield, alkali-proof gloves."
        first_aid = "Water only, at once, and until medical help takes over."
        source = "common practice, no source"
        revision = "1"
        approved_by = ""
        """;
}
