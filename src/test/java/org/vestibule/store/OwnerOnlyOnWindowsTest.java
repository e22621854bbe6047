package org.vestibule.store;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files for their owner alone, by a model of Windows' access lists. */
class OwnerOnlyOnWindowsTest {

  private final FileSystem windows =
      Jimfs.newFileSystem(
          Configuration.windows().toBuilder().setAttributeViews("basic", "owner", "acl").build());
  private Path file;

  @BeforeEach
  void folder() throws IOException {
    Path folder = windows.getPath("C:\\Practice");
    OwnerOnly.createFolder(folder);
    file = folder.resolve("practice.secret");
  }

  private static AclFileAttributeView acl(Path file) {
    return Files.getFileAttributeView(file, AclFileAttributeView.class);
  }

  @Test
  void onlyTheOwnerStandsInTheList() throws IOException {
    OwnerOnly.createFile(file);
    for (Path made : List.of(file, file.getParent())) {
      assertThat(acl(made).getAcl())
          .singleElement()
          .satisfies(
              entry -> {
                assertThat(entry.principal()).isEqualTo(Files.getOwner(made));
                assertThat(entry.type()).isEqualTo(AclEntryType.ALLOW);
              });
    }
    assertThat(OwnerOnly.isOpenToOthers(file)).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"Everyone", "BUILTIN\\Users", "NT AUTHORITY\\Authenticated Users"})
  void aListWithEverybodyInItIsOpen(String group) throws IOException {
    OwnerOnly.createFile(file);
    allow(group, AclEntryPermission.READ_DATA);
    assertThat(OwnerOnly.isOpenToOthers(file)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"NT AUTHORITY\\SYSTEM", "BUILTIN\\Administrators", "PC\\ada"})
  void theSystemAndItsKeepersMayRead(String principal) throws IOException {
    OwnerOnly.createFile(file);
    allow(principal, AclEntryPermission.READ_DATA);
    assertThat(OwnerOnly.isOpenToOthers(file)).isFalse();
  }

  @Test
  void seeingThatAFileIsThereIsNotReadingIt() throws IOException {
    OwnerOnly.createFile(file);
    allow("Everyone", AclEntryPermission.READ_ATTRIBUTES);
    assertThat(OwnerOnly.isOpenToOthers(file)).isFalse();
  }

  private void allow(String group, AclEntryPermission permission) throws IOException {
    acl(file)
        .setAcl(
            List.of(
                AclEntry.newBuilder()
                    .setType(AclEntryType.ALLOW)
                    .setPrincipal(
                        windows.getUserPrincipalLookupService().lookupPrincipalByName(group))
                    .setPermissions(permission)
                    .build()));
  }
}
