using RoutingRules.Assignment;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Issues;

/// <summary>One show for each thing that engine and verifier once disagreed about.</summary>
public sealed class AssignmentIssueTests
{
    [Theory]
    [InlineData("kept-stream-without-receivers")]
    [InlineData("served-through-two-networks")]
    [InlineData("processor-between-box-and-rack")]
    [InlineData("processor-as-a-destination")]
    [InlineData("pin-nothing-can-feed")]
    [InlineData("half-a-block-cleared")]
    [InlineData("block-box-with-a-fixed-group")]
    [InlineData("held-line-from-a-radio")]
    [InlineData("three-entries-on-one-bus")]
    [InlineData("insert-fed-behind-a-kept-stream")]
    public void The_verifier_accepts_the_result(string name) =>
        Assert.Null(AssignCases.Verdict(Read(name), AssignCases.Assign(Read(name), new AssignmentOptions()), new AssignmentOptions()));

    [Theory]
    [InlineData("three-entries-on-one-bus", "desk/out/1")]
    [InlineData("kept-stream-over-a-missing-link", "l2")]
    [InlineData("second-network-without-links", "l1")]
    public void The_verifier_accepts_the_result_without_something(string name, string without)
    {
        var options = new AssignmentOptions { Without = [without] };
        Assert.Null(AssignCases.Verdict(Read(name), AssignCases.Assign(Read(name), options), options));
    }

    [Fact]
    public void Assigning_again_changes_nothing()
    {
        var once = AssignCases.Assign(Read("false-optimum"), new AssignmentOptions());
        var twice = AssignCases.Assign(once.Show, new AssignmentOptions());
        Assert.Equal(["mix/1", "mix/2"], once.Placements.Select(placement => placement.Demand));
        Assert.Equal(AssignCases.Json(once.Show), AssignCases.Json(twice.Show));
    }

    [Fact]
    public void A_cable_in_a_dead_output_has_one_finding() =>
        Assert.Equal(
            ["RR2013"],
            Promise
                .Engine.Check(Read("dead-cabled-output"))
                .Findings.Where(finding => finding.Entities.Any(entity => entity.Id.StartsWith("box/out/", StringComparison.Ordinal)))
                .Select(finding => finding.Rule)
        );

    [Fact]
    public void A_cancelled_search_returns_the_best_so_far_as_documented() =>
        Assert.NotNull(AssignCases.Assign(Read("second-network-without-links"), new AssignmentOptions(), new CancellationToken(true)));

    private static Show Read(string name)
    {
        var read = ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "issues", $"{name}.show.json"));
        Assert.True(read.IsUsable, string.Join(" ", read.Findings));
        return read.Value!;
    }
}
