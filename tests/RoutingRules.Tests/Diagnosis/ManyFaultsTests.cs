using RoutingRules.Model;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>
/// The same on more shows and more slips, also two at once and where places are left open. The floors are what was reached when they were set.
/// </summary>
[Trait("Speed", "slow")]
public sealed class ManyFaultsTests
{
    private const int Seed = 20;

    [Fact]
    public void One_fault_in_shows_that_name_their_places()
    {
        var table = FaultTable.Single(Shows(isPinned: true), Seed, 15);

        Assert.True(table.One >= 0.98 && table.OneOfHeard >= 0.99, table.ToString());
        Assert.True(table.Restored >= 0.98, table.ToString());
        Assert.True(table.Work <= 1.5, table.ToString());
    }

    [Fact]
    public void One_fault_in_shows_that_leave_places_open()
    {
        var table = FaultTable.Single(Shows(isPinned: false), Seed, 15);

        Assert.True(table.One >= 0.96, table.ToString());
        Assert.True(table.Restored >= 0.95, table.ToString());
        Assert.True(table.Work <= 3, table.ToString());
    }

    [Fact]
    public void Two_faults_are_two_causes_at_most()
    {
        var table = FaultTable.Double(Shows(isPinned: true), Seed, 150);

        Assert.True(table.OneOfHeard >= 0.95, table.ToString());
        Assert.True(table.RestoredOfHeard >= 0.92, table.ToString());
        Assert.True(table.Work <= 4.5, table.ToString());
    }

    private static List<Show> Shows(bool isPinned) =>
        CleanShows.All(40, Seed).FindAll(show => show.Title.EndsWith("pinned", StringComparison.Ordinal) == isPinned);
}
