using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Model;
using RoutingRules.Rules;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Hearing.EarRig;

namespace RoutingRules.Tests.Checking.Rules.Hearing;

public sealed class ListenerDoubledTests
{
    private static readonly ListenerDoubled Rule = new();

    private static Feed Bass => Ears("bass", "desk/aux/1", "rack/in/1") with { Name = "Ears bass", Person = "bass", Pack = "3" };

    private static Feed Keys => Ears("keys", "desk/aux/2", "rack/in/2") with { Name = "Ears keys", Person = "keys", Pack = "4" };

    [Fact]
    public void One_pack_in_two_feeds_is_an_error()
    {
        Expect.One(
            Rule,
            EarRig.Show(Keys with { Pack = "3" }, Bass),
            Severity.Error,
            "/feeds/0/pack",
            "Pack 3 is in 2 in-ear feeds at once, 'Ears bass' (bass) and 'Ears keys' (keys): it can hear only one of them.",
            "pack=3",
            "feed=bass",
            "feed=keys"
        );
        Assert.Equal(
            Expect.Fingerprints(Rule, EarRig.Show(Keys with { Pack = "3" }, Bass)),
            Expect.Fingerprints(Rule, EarRig.Show(Bass, Keys with { Pack = "3" }))
        );
    }

    [Fact]
    public void A_mix_that_ends_in_ears_counts_whatever_it_is_called() =>
        Assert.Single(Testing.RuleTester.Findings(Rule, EarRig.Show(Bass, Keys with { Pack = "3", Role = FeedRole.Monitor })));

    [Fact]
    public void One_person_with_two_mixes_is_a_warning() =>
        Expect.One(
            Rule,
            EarRig.Show(Bass, Keys with { Person = "Bass" }),
            Severity.Warning,
            "/feeds/1/person",
            "bass is in 2 in-ear feeds with different mixes, 'Ears bass' (pack 3) and 'Ears keys' (pack 4): nothing says which one to wear.",
            "person=bass",
            "feed=bass",
            "feed=keys"
        );

    [Fact]
    public void A_doubled_pack_of_one_person_is_told_once() =>
        Assert.Equal(Severity.Error, Assert.Single(Testing.RuleTester.Findings(Rule, EarRig.Show(Bass, Keys with { Person = "bass", Pack = "3" }))).Severity);

    [Fact]
    public void Spare_packs_backups_sides_of_a_set_and_wedges_are_meant()
    {
        Expect.None(Rule, EarRig.Show(Bass, Keys));
        Expect.None(Rule, EarRig.Show(Bass, Keys with { Person = "bass", Source = At("desk/aux/1") }));
        Expect.None(Rule, EarRig.Show(Bass, Keys with { Person = "bass", Pack = "3", BackupOf = new("bass") }));
        Expect.None(Rule, EarRig.Show(Bass with { Set = "s", Part = "left" }, Keys with { Person = "bass", Pack = "3", Set = "s", Part = "right" }));
        Expect.None(Rule, EarRig.Show(Bass, Feed("wedge", FeedRole.Monitor, "desk/aux/2", "box/out/8") with { Person = "bass" }));
    }
}
