namespace Logbook.Plant.Reading;

/// <summary>[[calculation]]: which calculation takes which points and constants, and feeds which derived points.</summary>
internal sealed class CalculationSection(KnownPoints points)
{
    private readonly Dictionary<string, string> _fedBy = new(StringComparer.OrdinalIgnoreCase);

    public IReadOnlyList<CalculationBinding> Read(Fields root)
    {
        var bindings = new List<CalculationBinding>();
        foreach (var table in root.Tables("calculation"))
        {
            var name = table.Text("name");
            SiteSections.RefuseTwice(table, "name", name, bindings.Select(b => b.Name));
            var inputs = Each(table, "inputs", Input);
            bindings.Add(new CalculationBinding
            {
                Name = name,
                Use = table.Code("use"),
                Inputs = inputs,
                Outputs = Each(table, "outputs", (f, output) => Output(f, output, name)),
                Lags = Lags(table, inputs),
                Estimates = Each(table, "estimates", (f, output) => f.Code(output)),
                MethodU = Each(table, "method_u", Uncertainties.Of),
                Moves = Each(table, "moves", Moves),
                Settles = Durations(table, "settles"),
                Place = table.Place,
            });
            if (!table.Has("inputs"))
            {
                table.Wrong("inputs", "[[calculation]] has no inputs", "inputs.ROLE = \"TAG\"");
            }

            table.RefuseOthers();
        }

        return bindings;
    }

    /// <summary>Every key of an inner table, with what <paramref name="read"/> makes of it; null is left out.</summary>
    private static Dictionary<string, T> Each<T>(Fields table, string key, Func<Fields, string, T?> read)
        where T : class
    {
        var found = new Dictionary<string, T>(StringComparer.Ordinal);
        if (table.Table(key) is { } inner)
        {
            foreach (var name in inner.Keys)
            {
                if (read(inner, name) is { } value)
                {
                    found[name] = value;
                }
            }
        }

        return found;
    }

    private InputSource? Input(Fields inputs, string role)
    {
        switch (inputs.Raw(role))
        {
            case string tag:
                inputs.Keep<string>(null, WhyNoInput(tag, inputs.PlaceOf(role)));
                return new InputSource.FromPoint(tag);
            case TomlTable:
                return Constant(inputs.Table(role)!, role);
            default:
                inputs.Wrong(role, $"input {role} is neither a tag nor a constant", "\"TAG\", or { value = \"NUMBER UNIT\", u = \"...\", source = \"...\" }");
                return null;
        }
    }

    private Mistake? WhyNoInput(string tag, Place place)
    {
        var mistake = points.WhyNot(tag, place);
        return mistake is not null && Typed.Measured(tag, place, out _) is not null
            ? new Mistake(place, $"'{tag}' is no tag", $"a constant is {{ value = \"{tag}\", u = \"...\", source = \"...\" }}")
            : mistake;
    }

    private static InputSource.Constant? Constant(Fields table, string role)
    {
        var text = table.Text("value");
        var measured = text.Length == 0 ? null : table.Keep(Typed.Measured(text, table.PlaceOf("value"), out var mistake), mistake);
        if (measured is { Unit: null })
        {
            table.Wrong("value", $"constant '{text}' of {role} has no unit", "a number and its unit as in \"0.500 mol/L\"; a plain ratio has the unit 1");
        }

        if (!table.Has("u"))
        {
            table.Wrong("u", $"constant of {role} has no u", "its standard uncertainty, in its unit or as in \"2%\"; \"exact\" for a choice or an aim");
        }

        // An aim or a choice is what it is; a measured constant never is.
        var exact = table.Raw("u") is "exact";
        var u = exact ? null : Uncertainties.Of(table, "u");
        var source = table.Text("source");
        var fitted = table.Date("fitted");
        table.RefuseOthers();
        return measured is null || (u is null && !exact) ? null : new InputSource.Constant(measured.Value, measured.Unit, u?.Of(measured.Value) ?? 0, source, fitted);
    }

    private string Output(Fields outputs, string output, string binding)
    {
        var tag = outputs.Text(output);
        var place = outputs.PlaceOf(output);
        var mistake = tag.Length == 0 ? null : points.WhyNot(tag, place, PointKind.Derived);
        if (mistake is null && !_fedBy.TryAdd(tag, binding))
        {
            mistake = new Mistake(place, $"point '{tag}' is fed by '{_fedBy[tag]}' already", "each derived point has one source");
        }

        outputs.Keep<string>(null, mistake);
        return tag;
    }

    private static Dictionary<string, TimeSpan> Lags(Fields table, Dictionary<string, InputSource> inputs)
    {
        var found = new Dictionary<string, TimeSpan>(StringComparer.Ordinal);
        if (table.Table("lag") is not { } lags)
        {
            return found;
        }

        foreach (var role in lags.Keys)
        {
            if (!inputs.ContainsKey(role))
            {
                lags.Wrong(role, $"lag of '{role}', which is no input here", Spelling.Accepted(role, inputs.Keys));
            }
            else if (lags.Duration(role) is { } lag)
            {
                found[role] = lag;
            }
        }

        return found;
    }

    private static Dictionary<string, TimeSpan> Durations(Fields table, string key)
    {
        var found = new Dictionary<string, TimeSpan>(StringComparer.Ordinal);
        if (table.Table(key) is { } inner)
        {
            foreach (var name in inner.Keys)
            {
                if (inner.Duration(name) is { } duration)
                {
                    found[name] = duration;
                }
            }
        }

        return found;
    }

    private IReadOnlyList<string> Moves(Fields moves, string output)
    {
        var tags = moves.Texts(output);
        foreach (var (tag, place) in tags)
        {
            moves.Keep<string>(null, points.WhyNot(tag, place, PointKind.Read));
        }

        return [.. tags.Select(t => t.Text)];
    }
}
