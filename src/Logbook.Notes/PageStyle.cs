namespace Logbook.Notes;

/// <summary>The one style of every HTML note; a template puts it in as <c>note.style</c>, or has its own.</summary>
internal static class PageStyle
{
    public const string Css = """
        body { font: 15px/1.4 system-ui, sans-serif; color: #111; background: #fff; max-width: 52rem; margin: 1.5rem auto; padding: 0 1rem; }
        h1 { font-size: 1.35rem; margin: 0; }
        h2 { font-size: 1rem; margin: 1.1rem 0 .3rem; border-bottom: 1px solid #777; }
        h2 small { font-weight: normal; float: right; }
        header p { margin: .15rem 0; }
        .longer, .fault { border: 2px solid #111; padding: .3rem .6rem; font-weight: bold; }
        .can-hurt { border: 3px solid #111; padding: 0 .7rem .5rem; margin-top: 1rem; }
        dl { display: grid; grid-template-columns: minmax(6.5rem, max-content) 1fr; gap: .2rem .8rem; margin: 0; }
        dt { font-weight: bold; }
        dd { margin: 0; overflow-wrap: anywhere; }
        figure { margin: .6rem 0; break-inside: avoid; }
        svg { width: 100%; max-width: 44rem; height: auto; font: 11px system-ui, sans-serif; }
        figcaption { font-size: .85rem; }
        .caution { margin: .4rem 0; break-inside: avoid; }
        .draft { font-weight: bold; border: 1px solid #111; padding: 0 .3rem; }
        .standing { border-top: 1px solid #777; border-bottom: 1px solid #777; padding: .4rem 0; font-weight: bold; }
        .sign { display: flex; gap: 2rem; margin: 1.5rem 0 .5rem; }
        .sign span { flex: 1; border-top: 1px solid #111; padding-top: .2rem; }
        code { overflow-wrap: anywhere; }
        @page { margin: 15mm; }
        @media print { body { font-size: 10.5pt; margin: 0; max-width: none; padding: 0; } section, .caution { break-inside: avoid-page; } h2 { break-after: avoid; } }
        """;
}
