using System.Buffers;
using RoutingRules.Documents.Formats;
using RoutingRules.Profiles;

namespace RoutingRules.Documents;

/// <summary>Writes device profiles.</summary>
/// <remarks>
/// Indented UTF-8 without a byte order mark, LF, a line break at the end; members in a fixed order, those that say what their absence means left out.
/// Reading what was written gives an equal profile. Thread safe.
/// </remarks>
public static class ProfileWriter
{
    /// <summary>Writes a profile.</summary>
    /// <exception cref="ArgumentException">An <c>extensions</c> member of the profile is not a JSON object.</exception>
    public static void Write(DeviceProfile profile, IBufferWriter<byte> output) => DocumentWriter.Write(profile, ProfileTables.Profile, output);

    /// <summary>A profile as bytes.</summary>
    /// <exception cref="ArgumentException">An <c>extensions</c> member of the profile is not a JSON object.</exception>
    public static byte[] ToUtf8(DeviceProfile profile) => DocumentWriter.ToUtf8(profile, ProfileTables.Profile);
}
