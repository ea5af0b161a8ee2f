using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>The site's calculations, linked to the plug-ins', each after those that it takes from.</summary>
public sealed class CalculationGraph
{
    private CalculationGraph(Site site, IReadOnlyList<LinkedCalculation> inOrder, IReadOnlyList<CalculationBinding> unlinked, IReadOnlyList<Mistake> mistakes)
    {
        Site = site;
        InOrder = inOrder;
        Unlinked = unlinked;
        Mistakes = mistakes;
    }

    public Site Site { get; }

    /// <summary>What cannot be linked, each mistake with its binding's place.</summary>
    public IReadOnlyList<Mistake> Mistakes { get; }

    internal IReadOnlyList<LinkedCalculation> InOrder { get; }

    /// <summary>Bindings that cannot run for a mistake of their own.</summary>
    internal IReadOnlyList<CalculationBinding> Unlinked { get; }

    /// <summary>Every mistake in the site's bindings: unknown ids, roles, points, units that do not convert, loops.</summary>
    public static IReadOnlyList<Mistake> Check(Site site, IReadOnlyList<LoadedCalculation> calculations) => Link(site, calculations).Mistakes;

    /// <summary>Every point that a derived one hangs on, through all calculations and at any lag; none for one that is read.</summary>
    internal IReadOnlySet<string> Behind(string tag)
    {
        var behind = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var waiting = new Queue<string>([tag]);
        while (waiting.TryDequeue(out var next))
        {
            var giver = InOrder.FirstOrDefault(c => c.Outputs.Any(o => next.Equals(o.Point?.Tag, StringComparison.OrdinalIgnoreCase)));
            foreach (var point in giver?.Inputs.Select(i => i.Point).OfType<Point>().Where(p => behind.Add(p.Tag)) ?? [])
            {
                waiting.Enqueue(point.Tag);
            }
        }

        return behind;
    }

    internal static CalculationGraph Link(Site site, IReadOnlyList<LoadedCalculation> calculations)
    {
        var linked = new List<LinkedCalculation>();
        var unlinked = new List<CalculationBinding>();
        var mistakes = new List<Mistake>();
        foreach (var binding in site.Calculations)
        {
            var before = mistakes.Count;
            var link = new CalculationLink(site, calculations, binding, mistakes).Link();
            if (link is not null && mistakes.Count == before)
            {
                linked.Add(link);
            }
            else
            {
                unlinked.Add(binding);
            }
        }

        return new CalculationGraph(site, Order(linked, unlinked, mistakes), unlinked, mistakes);
    }

    /// <summary>Each after those that give its points, in the file's order beside that; what is left over stands in a loop.</summary>
    private static List<LinkedCalculation> Order(IReadOnlyList<LinkedCalculation> linked, List<CalculationBinding> unlinked, List<Mistake> mistakes)
    {
        var waiting = linked.ToList();
        var done = new List<LinkedCalculation>();
        while (waiting.Count > 0)
        {
            var given = waiting.SelectMany(c => c.Outputs).Where(o => o.Point is not null).Select(o => o.Point!.Tag).ToHashSet(StringComparer.Ordinal);
            var ready = waiting.FirstOrDefault(c => !c.CurrentPoints.Any(p => given.Contains(p.Tag)));
            if (ready is null)
            {
                mistakes.Add(new Mistake(waiting[0].Binding.Place,
                    $"{Words.And([.. waiting.Select(c => c.Name)])} take from each other in a loop", "a calculation may take only from those that do not take from it"));
                unlinked.AddRange(waiting.Select(c => c.Binding));
                return done;
            }

            done.Add(ready);
            waiting.Remove(ready);
        }

        return done;
    }
}
