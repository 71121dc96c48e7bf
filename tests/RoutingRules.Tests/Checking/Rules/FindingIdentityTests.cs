using RoutingRules.Checking.Facts;
using RoutingRules.Rules;
using RoutingRules.Tests.Reports;

namespace RoutingRules.Tests.Checking.Rules;

public sealed class FindingIdentityTests
{
    private static Finding Of(string message, string pointer) => ReportSamples.Finding("T1", Severity.Error, message, "") with { Pointer = pointer };

    private static string[] Identities(params Finding[] findings)
    {
        var list = findings.ToList();
        FindingIdentity.MakeDistinct(list);
        return [.. list.Select(finding => $"{finding.Message} {string.Join(' ', finding.Entities.Select(entity => entity.Id))}")];
    }

    [Fact]
    public void Findings_of_equal_entities_are_numbered_by_what_they_say_wherever_they_stand()
    {
        Assert.Equal(["b box/out/5 2", "a box/out/5"], Identities(Of("b", "/x/0"), Of("a", "/x/1")));
        Assert.Equal(["a box/out/5", "b box/out/5 2"], Identities(Of("a", "/x/5"), Of("b", "/x/9")));
    }

    [Fact]
    public void Others_keep_their_identity()
    {
        var other = Of("a", "/x/0") with { Entities = [Entity.Of("output", "box/out/6")] };

        Assert.Equal(["a box/out/6", "a box/out/5"], Identities(other, Of("a", "/x/1")));
    }

    [Fact]
    public void The_order_in_which_a_rule_names_entities_means_nothing()
    {
        var one = Of("a", "/x/0") with { Entities = [Entity.Of("output", "b/out/1"), Entity.Of("feed", "f"), Entity.Of("output", "a/out/1")] };
        var turned = one with { Entities = [Entity.Of("output", "a/out/1"), Entity.Of("output", "b/out/1"), Entity.Of("feed", "f")] };
        var otherRoles = one with { Entities = [Entity.Of("output", "b/out/1"), Entity.Of("input", "f"), Entity.Of("output", "a/out/1")] };

        Assert.Equal(one.Fingerprint(), turned.Fingerprint());
        Assert.NotEqual(one.Fingerprint(), otherRoles.Fingerprint());
        Assert.Equal(["a b/out/1 f a/out/1 2", "a a/out/1 b/out/1 f"], Identities(one, turned));
    }

    [Fact]
    public void Numbering_twice_changes_nothing()
    {
        var list = new List<Finding> { Of("c", "/0"), Of("a", "/1"), Of("b", "/2") };
        FindingIdentity.MakeDistinct(list);
        var once = list.ToArray();
        FindingIdentity.MakeDistinct(list);

        Assert.Equal(once, list);
        Assert.Equal(3, list.Select(finding => finding.Fingerprint()).Distinct().Count());
    }
}
