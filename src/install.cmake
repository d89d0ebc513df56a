# What `cmake --install` puts where: library, public headers, command, package files.
set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/hardskin)

install(TARGETS hardskin EXPORT hardskin-targets ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
install(TARGETS hardskin_cli RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(DIRECTORY ${PROJECT_SOURCE_DIR}/include/hardskin DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}
  FILES_MATCHING PATTERN "*.h")
# table.h includes this one; beside it, it is found without a path.
install(FILES ${PROJECT_BINARY_DIR}/tables/tables_list.h
  DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/hardskin/tables)

install(EXPORT hardskin-targets NAMESPACE hardskin:: DESTINATION ${package_folder})
configure_package_config_file(${CMAKE_CURRENT_LIST_DIR}/hardskin-config.cmake.in
  ${PROJECT_BINARY_DIR}/hardskin-config.cmake INSTALL_DESTINATION ${package_folder})
write_basic_package_version_file(${PROJECT_BINARY_DIR}/hardskin-config-version.cmake
  COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/hardskin-config.cmake
  ${PROJECT_BINARY_DIR}/hardskin-config-version.cmake DESTINATION ${package_folder})
configure_file(${CMAKE_CURRENT_LIST_DIR}/hardskin.pc.in ${PROJECT_BINARY_DIR}/hardskin.pc @ONLY)
install(FILES ${PROJECT_BINARY_DIR}/hardskin.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig)
