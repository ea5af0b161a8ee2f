using Logbook.Plant;
using Scriban;
using Scriban.Functions;
using Scriban.Parsing;
using Scriban.Runtime;
using Scriban.Syntax;

namespace Logbook.Notes;

/// <summary>One template file, run without trust: it sees the model, a few text functions and nothing else.</summary>
internal static class NoteTemplate
{
    private static readonly TimeSpan Deadline = TimeSpan.FromSeconds(5);
    private const int Iterations = 20_000;
    private const int Characters = 2_000_000;

    /// <summary>The text with what drew it at its foot, or one line: file, line, column and what is wrong.</summary>
    /// <param name="shipped">The shipped template's name when this is that one; null for a site's own.</param>
    public static (string? Text, string? Fault) Render(string path, TemplateName? shipped, ScriptObject model, NoteFormat format)
    {
        if (OnDisk.Try(() => TextFile.Read(path), out var refused) is not { } source)
        {
            return (null, $"{path}: cannot be read: {refused!.Message}");
        }

        try
        {
            var template = Template.Parse(source, path);
            if (template.HasErrors)
            {
                var first = template.Messages.First(m => m.Type == ParserMessageType.Error);
                return (null, Fault(path, first.Span, first.Message));
            }

            using var limit = new CancellationTokenSource(Deadline);
            var drawnBy = shipped is null ? DrawnBy.Own(path, source) : DrawnBy.Shipped(shipped);
            var text = DrawnBy.Under(template.Render(Context(model, format, limit.Token)), drawnBy, format);
            return (format == NoteFormat.Text ? Columns.Wrap(text) : text, null);
        }
        catch (ScriptRuntimeException wrong)
        {
            return (null, Fault(path, wrong.Span, wrong.OriginalMessage));
        }
    }

    private static EscapingContext Context(ScriptObject model, NoteFormat format, CancellationToken cancel)
    {
        var all = TemplateContext.GetDefaultBuiltinObject();
        // No date, no evaluation, no include, no .NET objects: what is not here is an unknown name to the template.
        var builtin = new ScriptObject(StringComparer.Ordinal) { ["string"] = all["string"], ["array"] = all["array"], ["math"] = all["math"] };
        var context = new EscapingContext(builtin, text => Escape.For(format, text))
        {
            StrictVariables = true,
            EnableRelaxedMemberAccess = false,
            EnableRelaxedIndexerAccess = false,
            LoopLimit = Iterations,
            RecursiveLimit = 50,
            ObjectRecursionLimit = 10,
            LimitToString = Characters,
            OutputLimit = Characters,
            OnStringLimit = ScriptLimitBehavior.Throw,
            OnOutputLimit = ScriptLimitBehavior.Throw,
            RegexTimeOut = TimeSpan.FromSeconds(1),
            MemberFilter = _ => false,
            CancellationToken = cancel,
            NewLine = "\n",
        };
        context.PushGlobal(new ScriptObject(StringComparer.Ordinal) { ["note"] = model });
        return context;
    }

    private static string Fault(string path, SourceSpan span, string message) =>
        $"{path}:{span.Start.Line + 1}:{span.Start.Column + 1}: {Handover.Say.Visible(message.ReplaceLineEndings(" ").TrimEnd('.'))}";

    /// <summary>Escapes every value that a template prints; the template's own text stays as it is.</summary>
    private sealed class EscapingContext(ScriptObject builtin, Func<string, string> escape) : TemplateContext(builtin)
    {
        public override TemplateContext Write(SourceSpan span, object? textAsObject) =>
            textAsObject is Markup markup ? Write(markup.Text) : Write(escape(ObjectToString(textAsObject) ?? ""));
    }
}

/// <summary>Text that the program made in the note's own format: printed as it is.</summary>
internal sealed record Markup(string Text);
