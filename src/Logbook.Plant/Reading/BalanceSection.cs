using System.Globalization;

namespace Logbook.Plant.Reading;

/// <summary>[[balance]]: <c>1*F1 - 1*F2*C2</c>. Signs between terms stand in spaces, for a tag may hold a '-'.</summary>
internal static class BalanceSection
{
    private const string Form = "as in \"1*F1 - 1*F2*C2\": terms of a number and one or two tags, signs between them in spaces";

    public static IReadOnlyList<Balance> Read(Fields root, KnownPoints points)
    {
        var balances = new List<Balance>();
        foreach (var table in root.Tables("balance"))
        {
            var name = table.Text("name");
            SiteSections.RefuseTwice(table, "name", name, balances.Select(b => b.Name));
            var terms = Terms(table, points);
            balances.Add(new Balance(name, terms, table.Number("equals") ?? 0, table.Number("u") ?? 0));
            if (table.Number("u") < 0)
            {
                table.Wrong("u", "u is below 0", "a standard uncertainty, 0 or more");
            }

            table.RefuseOthers();
        }

        return balances;
    }

    private static IReadOnlyList<BalanceTerm> Terms(Fields table, KnownPoints points)
    {
        var text = table.Text("terms");
        var terms = new List<BalanceTerm>();
        var sign = 1;
        var wantsTerm = true;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (word is "+" or "-")
            {
                if (wantsTerm && terms.Count > 0)
                {
                    table.Wrong("terms", $"balance has two signs beside '{word}'", Form);
                    return terms;
                }

                sign = word == "-" ? -1 : 1;
                wantsTerm = true;
                continue;
            }

            if (!wantsTerm || Term(word, sign) is not { } term)
            {
                table.Wrong("terms", $"balance cannot be read at '{word}'", Form);
                return terms;
            }

            Link(table, term, points);
            terms.Add(term);
            (sign, wantsTerm) = (1, false);
        }

        if (text.Length > 0 && (wantsTerm || terms.Count < 2))
        {
            table.Wrong("terms", "balance is not whole", $"two terms at least, {Form}");
        }

        return terms;
    }

    private static BalanceTerm? Term(string word, int sign)
    {
        var parts = word.Split('*');
        var hasFactor = Typed.Number(parts[0], Place.Unknown, out _) is not null;
        var factor = hasFactor ? Typed.Number(parts[0], Place.Unknown, out _)!.Value : 1;
        var tags = hasFactor ? parts[1..] : parts;
        return tags.Length is 1 or 2 && tags.All(t => t.Length > 0 && !double.TryParse(t, NumberStyles.Float, CultureInfo.InvariantCulture, out _))
            ? new BalanceTerm(sign * factor, tags)
            : null;
    }

    private static void Link(Fields table, BalanceTerm term, KnownPoints points)
    {
        foreach (var tag in term.Tags)
        {
            table.Keep<string>(null, points.WhyNot(tag, table.PlaceOf("terms")));
        }
    }
}
