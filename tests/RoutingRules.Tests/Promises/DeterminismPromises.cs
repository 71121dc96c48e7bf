using System.Globalization;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Documents;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Promise 5 inside one process: threads and cultures. Hash seeds, time zones and real cultures are tried with processes of their own.</summary>
[Trait("Speed", "slow")]
public sealed class DeterminismPromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property Reports_are_the_same_bytes_under_a_contrary_culture() =>
        Promise.Of(ShowArbitraries.Messy(), show => Report(show) == Contrarily(() => Report(show)) ? null : "The report changed with the culture.");

    [Property(MaxTest = Promise.Cases)]
    public Property Assignments_are_the_same_bytes_under_a_contrary_culture() =>
        Promise.Of(
            ShowArbitraries.ToAssign(),
            show => Assignment(show) == Contrarily(() => Assignment(show)) ? null : "The assignment changed with the culture."
        );

    [Theory]
    [InlineData(2)]
    [InlineData(8)]
    public void Many_threads_give_the_bytes_that_one_gives(int threads)
    {
        var shows = ShowArbitraries
            .ToAssign()
            .Generator.Sample(25, new Rnd(20270612), 40)
            .Concat(ShowArbitraries.Messy().Generator.Sample(25, new Rnd(20270612), 40))
            .ToArray();
        var alone = shows.Select(show => Report(show) + Assignment(show)).ToArray();
        var jobs = Enumerable.Range(0, shows.Length * 4).ToArray();
        var together = new string[jobs.Length];

        Parallel.ForEach(
            jobs,
            new ParallelOptions { MaxDegreeOfParallelism = threads },
            job => together[job] = Report(shows[job % shows.Length]) + Assignment(shows[job % shows.Length])
        );

        Assert.All(jobs, job => Assert.Equal(alone[job % shows.Length], together[job]));
    }

    [Fact]
    public void The_order_in_which_shows_were_seen_before_leaves_no_trace()
    {
        var shows = ShowArbitraries.ToAssign().Generator.Sample(50, new Rnd(20270612), 40).ToArray();

        var forward = shows.Select(Assignment).ToArray();
        var backward = shows.Reverse().Select(Assignment).Reverse().ToArray();

        Assert.Equal(forward, backward);
    }

    /// <summary>The JSON report and the text report of a show.</summary>
    private static string Report(Show show)
    {
        var utf8 = ShowWriter.ToUtf8(show);
        var check = DocumentCheck.Run(Promise.Engine, "made.show.json", utf8);
        using var bytes = new MemoryStream();
        using (var json = new JsonReport(bytes))
        {
            json.Add(check);
            json.Finish();
        }

        using var text = new StringWriter(CultureInfo.InvariantCulture);
        var report = new TextReport(text);
        report.Add(check);
        report.Finish();
        return Encoding.UTF8.GetString(bytes.ToArray()) + text;
    }

    private static string Assignment(Show show)
    {
        var result = AssignCases.Assign(show, AssignCases.Small);
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        AssignmentTextReport.Write(result, text);
        return AssignCases.Json(result.Show) + text;
    }

    /// <summary>Runs under a culture whose signs, separators and calendar all differ from the invariant ones, whatever cultures the machine has.</summary>
    private static T Contrarily<T>(Func<T> run)
    {
        var contrary = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        contrary.NumberFormat.NegativeSign = "minus ";
        contrary.NumberFormat.NumberDecimalSeparator = ",";
        contrary.NumberFormat.NumberGroupSeparator = ".";
        contrary.NumberFormat.NativeDigits = ["٠", "١", "٢", "٣", "٤", "٥", "٦", "٧", "٨", "٩"];
        contrary.NumberFormat.DigitSubstitution = DigitShapes.NativeNational;
        contrary.DateTimeFormat.ShortDatePattern = "dd'x'MM'x'yyyy";
        contrary.DateTimeFormat.DateSeparator = "x";
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = contrary;
            return run();
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = before;
        }
    }
}
