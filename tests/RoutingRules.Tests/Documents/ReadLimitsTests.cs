using System.Text;
using RoutingRules.Documents;
using RoutingRules.Documents.Tables;

namespace RoutingRules.Tests.Documents;

public sealed class ReadLimitsTests
{
    [Fact]
    public void The_defaults_are_those_of_the_format_definition()
    {
        var limits = ReadLimits.Default;

        Assert.Equal((67_108_864L, 32, 64, 100_000, 200), (limits.Bytes, limits.Depth, limits.ExtensionDepth, limits.Elements, limits.Problems));
    }

    [Fact]
    public void A_text_beyond_the_limit_is_refused()
    {
        var finding = Sample.OneFinding(Sample.Show, new ReadLimits { Bytes = 100 });

        Assert.Equal($"The file has {Encoding.UTF8.GetByteCount(Sample.Show)} bytes, more than the limit of 100.", finding.Message);
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(4, false)]
    public void A_list_beyond_the_limit_is_refused(int count, bool good)
    {
        var zones = string.Join(",", Enumerable.Range(1, count).Select(i => $$"""{"id":"z{{i}}"}"""));

        var read = Sample.Read(Sample.WithRig($$"""{"zones":[{{zones}}]}"""), new ReadLimits { Elements = 3 });

        Assert.Equal(good ? [] : ["Rig, \"zones\": the list has 4 entries, more than 3."], read.Findings.Select(finding => finding.Message));
    }

    [Fact]
    public void A_lower_depth_limit_holds_for_known_members_too() =>
        Assert.Contains("nested more than 3 deep", Sample.OneFinding(Sample.Show, new ReadLimits { Depth = 3 }).Message, StringComparison.Ordinal);

    [Fact]
    public void A_file_of_100_megabytes_is_refused_without_being_read()
    {
        var path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.show.json");
        try
        {
            using (var file = File.Create(path))
            {
                file.SetLength(100_000_000);
            }

            var before = GC.GetAllocatedBytesForCurrentThread();
            var read = ShowReader.ReadFile(path);
            var allocated = GC.GetAllocatedBytesForCurrentThread() - before;

            Assert.Equal("The file has 100000000 bytes, more than the limit of 67108864.", Assert.Single(read.Findings).Message);
            Assert.InRange(allocated, 0, 100_000);
        }
        finally
        {
            File.Delete(path);
        }
    }
}
