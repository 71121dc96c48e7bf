using System.Runtime.InteropServices;
using System.Runtime.Versioning;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace RoutingRules.Cli.Output;

/// <summary>Who may read and write a file, to hand on to the file that takes its place.</summary>
/// <remarks>
/// A new file belongs to whoever writes it. It gets owner, group and access list of the old one where the system allows that; where it does not, it
/// gets less rather than more: what was for the old group or for a list of people would otherwise be for others.
/// Offsets and names after the Linux manual pages statx(2), fchown(2), getxattr(2) and acl(5). Elsewhere owner and group are not asked for.
/// </remarks>
[UnsupportedOSPlatform("windows")]
internal sealed class FileRights
{
    /// <summary>Only for whoever writes: what a file may be read by before it has its rights.</summary>
    public const UnixFileMode Private = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private const UnixFileMode Group = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute;
    private const UnixFileMode Special = UnixFileMode.SetUser | UnixFileMode.SetGroup;
    private const uint Unchanged = uint.MaxValue;
    private const int OtherToGroup = 3;

    private static readonly byte[] AccessList = "system.posix_acl_access\0"u8.ToArray();

    private readonly UnixFileMode mode;
    private readonly (uint User, uint Group)? owner;
    private readonly byte[]? list;

    private FileRights(string path)
    {
        mode = File.GetUnixFileMode(path);
        owner = OwnerOf(path);
        list = AccessListOf(path);
    }

    /// <summary>The rights of a file; null when there is none yet, or on a system that keeps them otherwise.</summary>
    /// <param name="path">The file, not a link to it.</param>
    public static FileRights? Of(string path) => !OperatingSystem.IsWindows() && File.Exists(path) ? new FileRights(path) : null;

    /// <summary>True for a pipe, a socket or a device, whose place an ordinary file must not take; false where the system does not tell.</summary>
    /// <param name="path">What is there.</param>
    public static bool IsNoFile(string path)
    {
        const int mode = 28,
            kinds = 0xF000,
            ordinary = 0x8000,
            folder = 0x4000;
        return StatusOf(path) is { } status && (BitConverter.ToUInt16(status, mode) & kinds) is not (ordinary or folder);
    }

    /// <summary>Gives them to an open file of the present user.</summary>
    /// <param name="file">The file.</param>
    /// <exception cref="IOException">Its rights cannot be set.</exception>
    /// <exception cref="UnauthorizedAccessException">Its rights cannot be set.</exception>
    public void GiveTo(SafeFileHandle file)
    {
        var isOurs = owner is { } wanted && IsDone(() => ChangeOwner(file, wanted.User, wanted.Group));
        var hasGroup = isOurs || (owner is { } other && IsDone(() => ChangeOwner(file, Unchanged, other.Group)));
        var isListed = list is null || (hasGroup && IsDone(() => SetAttribute(file, AccessList, list, list.Length, 0)));
        var given = isOurs ? mode : mode & ~Special;
        File.SetUnixFileMode(file, hasGroup && isListed ? given : given & (~Group | (UnixFileMode)((int)given << OtherToGroup)));
    }

    private static (uint User, uint Group)? OwnerOf(string path)
    {
        const int user = 20,
            group = 24;
        return StatusOf(path) is { } status ? (BitConverter.ToUInt32(status, user), BitConverter.ToUInt32(status, group)) : null;
    }

    private static byte[]? StatusOf(string path)
    {
        const int here = -100,
            length = 256;
        const uint kindUserAndGroup = 0x19;
        var status = new byte[length];
        return OperatingSystem.IsLinux() && IsDone(() => Status(here, Terminated(path), 0, kindUserAndGroup, status)) ? status : null;
    }

    /// <summary>Null when there is none, or the system has no such lists.</summary>
    private static byte[]? AccessListOf(string path)
    {
        var buffer = new byte[ushort.MaxValue];
        var length = -1;
        return OperatingSystem.IsLinux() && IsDone(() => (length = (int)Attribute(Terminated(path), AccessList, buffer, buffer.Length)) < 0 ? -1 : 0)
            ? buffer[..length]
            : null;
    }

    private static byte[] Terminated(string path) => Encoding.UTF8.GetBytes(path + '\0');

    private static bool IsDone(Func<int> call)
    {
        try
        {
            return call() == 0;
        }
        catch (Exception fault) when (fault is EntryPointNotFoundException or DllNotFoundException)
        {
            return false;
        }
    }

    [DllImport("libc", EntryPoint = "statx")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Status(int folder, byte[] path, int flags, uint mask, byte[] status);

    [DllImport("libc", EntryPoint = "fchown")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int ChangeOwner(SafeFileHandle file, uint user, uint group);

    [DllImport("libc", EntryPoint = "getxattr")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern nint Attribute(byte[] path, byte[] name, byte[] value, nint size);

    [DllImport("libc", EntryPoint = "fsetxattr")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetAttribute(SafeFileHandle file, byte[] name, byte[] value, nint size, int flags);
}
