using System.Text;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Profiles.Generic;

namespace RoutingRules.Tests.Profiles;

public class GenericProfilesTests
{
    private readonly GenericProfiles profiles = new();

    [Fact]
    public void Ids_are_listed_once_each_in_ordinal_order()
    {
        var ids = profiles.Ids.Select(id => id.Value).ToArray();

        Assert.Equal(ids.Distinct().OrderBy(id => id, StringComparer.Ordinal), ids);
        Assert.Contains("generic/console-small", ids);
        Assert.Contains("generic/stage-box-medium", ids);
        Assert.All(ids, id => Assert.Matches("^generic/[a-z0-9]+(-[a-z0-9]+)*$", id));
    }

    [Fact]
    public void Every_id_is_found_and_gives_a_json_object()
    {
        Assert.All(profiles.Ids, id => Assert.StartsWith("{\n", Encoding.UTF8.GetString(Document(id).Span), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("generic/")]
    [InlineData("generic/console")]
    [InlineData("Generic/console-small")]
    [InlineData("console-small")]
    public void An_id_the_package_does_not_hold_gives_nothing(string id)
    {
        Assert.False(profiles.TryFind(new Id<DeviceProfile>(id), out var json));
        Assert.True(json.IsEmpty);
    }

    [Fact]
    public void A_caller_that_writes_into_a_document_spoils_it_for_nobody_else()
    {
        var id = profiles.Ids[0];
        var before = Document(id).ToArray();
        Assert.True(System.Runtime.InteropServices.MemoryMarshal.TryGetArray(Document(id), out var array));
        array.AsSpan().Clear();

        Assert.Equal(before, Document(id).ToArray());
    }

    private ReadOnlyMemory<byte> Document(Id<DeviceProfile> id)
    {
        Assert.True(profiles.TryFind(id, out var json));
        return json;
    }

    [Fact]
    public void Two_instances_list_the_same_ids()
    {
        Assert.Equal(profiles.Ids, new GenericProfiles().Ids);
    }
}
