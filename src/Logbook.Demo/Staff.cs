using Logbook.Plant;

namespace Logbook.Demo;

/// <summary>Who is on shift, by the site's own calendar.</summary>
internal sealed class Staff(Site site)
{
    /// <summary>At the panel: the first operator of the crew that is due.</summary>
    public string Panel(DateTimeOffset at) => Crew(at)[0].Code;

    /// <summary>In the field and at the titration bench: the crew's last operator.</summary>
    public string Field(DateTimeOffset at) => Crew(at)[^1].Code;

    public string Supervisor => First(Role.Supervisor).Code;

    public string Engineer => First(Role.Engineer).Code;

    private IReadOnlyList<Person> Crew(DateTimeOffset at)
    {
        var crew = Calendar.ShiftAt(site, at).Crew;
        var operators = site.People.Where(p => p.Role == Role.Operator && string.Equals(p.Crew, crew, StringComparison.OrdinalIgnoreCase)).ToList();
        return operators.Count > 0 ? operators : [First(Role.Operator)];
    }

    private Person First(Role role) => site.People.First(p => p.Role == role);
}
