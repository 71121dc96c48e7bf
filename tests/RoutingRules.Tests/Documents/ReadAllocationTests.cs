using RoutingRules.Documents;
using RoutingRules.Model;

namespace RoutingRules.Tests.Documents;

public sealed class ReadAllocationTests
{
    // The model itself takes about as many bytes as an indented document; twice that leaves room for texts that are longer in memory than in UTF-8.
    private const double MaxBytesPerByte = 2;

    [Fact]
    public void Reading_a_show_of_20_kilobytes_allocates_little_more_than_the_model()
    {
        var show = Sample.Good(Sample.Show);
        var feeds = Enumerable.Range(1, 60).SelectMany(i => show.Feeds.Select(feed => feed with { Id = new Id<Feed>($"{feed.Id}-{i}") })).ToValueList();
        var bytes = ShowWriter.ToUtf8(show with { Feeds = feeds });
        Assert.InRange(bytes.Length, 20_000, 40_000);
        Assert.True(ShowReader.Read(bytes).IsUsable);

        var before = GC.GetAllocatedBytesForCurrentThread();
        var read = ShowReader.Read(bytes);
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.NotNull(read.Value);
        Assert.InRange(allocated, 1, (long)(MaxBytesPerByte * bytes.Length));
    }
}
