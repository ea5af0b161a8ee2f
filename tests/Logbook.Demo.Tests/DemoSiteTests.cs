using Logbook.Plant;

namespace Logbook.Demo.Tests;

public sealed class DemoSiteTests
{
    private static readonly Site _template = SiteReader.Read(DemoRun.Template).Value!;

    [Fact]
    public void The_demo_site_has_no_mistakes() => Assert.Empty(SiteReader.Read(DemoSite.Files(DemoRun.Template, 1)).Mistakes);

    [Fact]
    public void It_keeps_the_starter_sites_rounds_and_points_and_has_a_name_of_its_own()
    {
        var site = DemoRun.Site(1);

        Assert.Equal(_template.Points.Select(p => p.Tag), site.Points.Select(p => p.Tag), StringComparer.Ordinal);
        Assert.Equal(_template.Rounds.Select(r => r.Id), site.Rounds.Select(r => r.Id), StringComparer.Ordinal);
        Assert.NotEqual(_template.Name, site.Name, StringComparer.Ordinal);
        Assert.NotEqual(_template.Id, site.Id, StringComparer.Ordinal);
    }

    [Fact]
    public void Its_people_have_the_starter_sites_roles_and_crews_and_names_and_codes_of_their_own()
    {
        var people = DemoRun.Site(1).People;

        Assert.Equal(_template.People.Select(p => (p.Role, p.Crew)), people.Select(p => (p.Role, p.Crew)));
        Assert.Empty(people.Select(p => p.Name).Intersect(_template.People.Select(p => p.Name), StringComparer.Ordinal));
        Assert.Equal(people.Count, people.Select(p => p.Code).Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    [Fact]
    public void One_seed_gives_one_set_of_people_and_another_seed_another()
    {
        Assert.Equal(DemoSite.Files(DemoRun.Template, 4).Texts, DemoSite.Files(DemoRun.Template, 4).Texts);
        Assert.NotEqual(DemoSite.Files(DemoRun.Template, 4).Texts, DemoSite.Files(DemoRun.Template, 5).Texts);
    }
}
